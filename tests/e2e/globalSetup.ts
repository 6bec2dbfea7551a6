import { chromium } from 'playwright-core'
import { preview } from 'vite'
import type { TestProject } from 'vitest/node'
import { ensureBrowser } from '../../.scripts/browser.mjs'
import { buildIfStale } from '../../.scripts/build.mjs'
import { root } from '../../.scripts/root.mjs'
import { CHROMIUM_FLAGS } from '../support/chromiumFlags'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built program is served; ends in a slash. */
    baseUrl: string
    /** Where the one browser of the run listens. */
    browserEndpoint: string
  }
}

/** Serves the built program and starts one browser for all end-to-end files. */
const setup = async (project: TestProject): Promise<() => Promise<void>> => {
  buildIfStale()
  const server = await preview({
    root,
    logLevel: 'warn',
    preview: { host: '127.0.0.1', port: 5200, strictPort: false, open: false },
  })
  const address = server.httpServer.address()
  if (!address || typeof address === 'string') throw new Error('the preview server has no port')
  const browser = await chromium.launchServer({ executablePath: ensureBrowser(), args: CHROMIUM_FLAGS })
  project.provide('baseUrl', `http://127.0.0.1:${address.port}/`)
  project.provide('browserEndpoint', browser.wsEndpoint())
  return async () => {
    await browser.close()
    await server.close()
  }
}

export default setup
