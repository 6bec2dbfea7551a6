import { createServer as createNetServer } from 'node:net'
import type { BrowserContext, Page } from 'playwright-core'
import { createServer } from 'vite'
import { root } from '../../.scripts/root.mjs'

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const probe = createNetServer().listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0))
    })
  })

export interface DeskServer {
  /** Opens tests/workers/desk.html, where a test can call state and workers themselves. */
  readonly open: (context: BrowserContext) => Promise<Page>
  readonly close: () => Promise<void>
}

/** Serves the sources, so that parts of the program can be tried in a real browser on a page of their own. */
export async function deskServer(): Promise<DeskServer> {
  const port = await freePort()
  const server = await createServer({
    root,
    logLevel: 'error',
    server: { host: '127.0.0.1', port, hmr: false },
  })
  await server.listen()
  return {
    open: async (context) => {
      const page = await context.newPage()
      await page.goto(`http://127.0.0.1:${port}/tests/workers/desk.html`)
      await page.waitForFunction(() => 'desk' in globalThis)
      return page
    },
    close: () => server.close(),
  }
}
