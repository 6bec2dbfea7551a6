import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { Page } from 'playwright-core'
import { afterEach, expect, test } from 'vitest'
import { inRoot } from '../../.scripts/root.mjs'
import { button, stage } from '../support/bench'
import { openApp, type OpenedApp, type OpenOptions } from '../support/browser'
import { mouseHand } from '../support/hand'
import { printToPdf, readPdf } from '../support/pdf'
import { type StaticServer, staticServer } from '../support/staticServer'
import { doTheJob, JOBS, MOUSE } from '../support/wholeJob'

// The built folder on the plainest host there is, below a path of its address, with and without a network.

const DIST = inRoot('dist')
const opened: { readonly close: () => Promise<void> }[] = []

afterEach(async () => {
  for (const thing of opened.splice(0).toReversed()) await thing.close()
})

async function served(): Promise<StaticServer> {
  const server = await staticServer(DIST)
  opened.push(server)
  return server
}

async function openAt(server: StaticServer, options: OpenOptions = {}): Promise<OpenedApp> {
  const app = await openApp({ baseUrl: server.url, ...options })
  opened.push(app)
  await benchOf(app.page)
  return app
}

const benchOf = (page: Page): Promise<void> => page.locator('.stage[aria-current="step"]').waitFor()

async function waitUntilKept(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Menu/ }).click()
  await page.getByText('opens on this device without a network').waitFor({ timeout: 30_000 })
  await page.keyboard.press('Escape')
}

/** The host is gone: not even a connection. */
async function cutNetwork(app: OpenedApp, server: StaticServer): Promise<void> {
  await app.context.setOffline(true)
  await server.close()
}

const filesOf = (worker: string): { readonly path: string; readonly sha256: string }[] =>
  JSON.parse(/BUILT_FILES=(\[.*?\]),BUILT_VERSION/.exec(worker)?.[1] ?? '[]') as ReturnType<typeof filesOf>

test('the built folder works below any path of a plain host, and asks for nothing outside of it', async () => {
  const server = await served()
  const app = await openAt(server)
  const hand = mouseHand(app.page)
  await hand.press(button(hand, /^Menu/))
  await hand.press(button(hand, /^Kitchen table/))
  await expect.poll(() => app.page.title()).toMatch(/^Kitchen/)
  for (const name of [/^Photo/, /^Size/, /^Edge/, /^Table/, /^Cuts/, /^Pour/, /^Paper/]) {
    await hand.press(stage(hand, name))
  }
  await app.page.locator('.sheet-preview svg').first().waitFor()
  await waitUntilKept(app.page)
  expect(server.asked.length).toBeGreaterThan(10)
  expect(server.asked.filter((path) => !path.startsWith('/shop/tools/slabs/'))).toEqual([])
})

test('opened once, then without a network: reloaded, the whole job, printed', async () => {
  const [job] = JOBS
  if (job === undefined) throw new Error('no job')
  const server = await served()
  const app = await openAt(server)
  await waitUntilKept(app.page)
  await cutNetwork(app, server)
  await app.page.reload()
  await benchOf(app.page)
  await doTheJob(mouseHand(app.page), job, MOUSE, 'job offline')
  expect(await app.page.evaluate(() => navigator.onLine)).toBe(false)
})

test('without a network both demos open and all fonts of the sheets are there', async () => {
  const server = await served()
  const app = await openAt(server)
  await waitUntilKept(app.page)
  await cutNetwork(app, server)
  const page = await app.context.newPage()
  await page.goto(`${server.url}?from=bookmark`)
  await benchOf(page)
  const hand = mouseHand(page)
  await hand.press(button(hand, /^Menu/))
  await hand.press(button(hand, /^Kitchen table/))
  await expect.poll(() => page.title()).toMatch(/^Kitchen/)
  await hand.press(stage(hand, /^Paper/))
  await page.locator('.sheet-preview svg').first().waitFor()
  const words = (await readPdf(await printToPdf(page))).flatMap(({ texts }) => texts.map(({ text }) => text))
  expect(words.join(' ')).toContain('Cut sheet')
})

/** The next version of the program: one file differs, and the worker's list says so. */
function publishNext(server: StaticServer): void {
  const worker = readFileSync(inRoot('dist', 'offline.js'), 'utf8')
  const icon = `${readFileSync(inRoot('dist', 'icon.svg'), 'utf8')}<!-- next -->`
  const known = filesOf(worker).find(({ path }) => path === 'icon.svg')
  if (known === undefined) throw new Error('the worker does not know the icon')
  server.replace('icon.svg', icon)
  server.replace(
    'offline.js',
    worker
      .replace(known.sha256, createHash('sha256').update(icon).digest('hex'))
      .replace(/BUILT_VERSION="\w+"/, 'BUILT_VERSION="next"'),
  )
}

test('a newer version is announced and comes when asked for; the job is saved first', async () => {
  const server = await served()
  const app = await openAt(server)
  await waitUntilKept(app.page)
  const other = await openAt(server, { beside: app })
  publishNext(server)
  await app.page.reload()
  // The message about the other window comes first, and goes when it has been read.
  await app.page.getByText('open in another window too').waitFor()
  await app.page.getByRole('button', { name: /Close this message/ }).click()
  const ready = app.page.getByText('A newer version of Waneline is ready')
  await ready.waitFor()
  const name = app.page.getByRole('textbox', { name: 'Name of this job' })
  await name.fill('Changed a moment before')
  await name.press('Enter')
  await app.page.evaluate(() => Object.assign(globalThis, { isOldPage: true }))
  await other.page.evaluate(() => Object.assign(globalThis, { isOldPage: true }))
  await app.page.getByRole('button', { name: 'Use it now' }).click()
  await app.page.waitForFunction(() => !('isOldPage' in globalThis))
  await benchOf(app.page)
  expect(await name.inputValue()).toBe('Changed a moment before')
  expect(await ready.count()).toBe(0)
  const iconNow = await app.page.evaluate(async () => (await fetch('./icon.svg')).text())
  expect(iconNow).toContain('<!-- next -->')
  // The other window was not touched, and parts that it has not loaded yet still come.
  expect(await other.page.evaluate(() => 'isOldPage' in globalThis)).toBe(true)
  await other.page
    .getByRole('navigation')
    .getByRole('button', { name: /^Paper/ })
    .click()
  await other.page.locator('.sheet-preview svg').first().waitFor()
})

test('a host that is half-way through an update is not kept, and the next whole one is', async () => {
  const server = await served()
  const front = readFileSync(inRoot('dist', 'index.html'), 'utf8')
  // Some hosts answer a missing file with their front page.
  server.replace('icon-512.png', front)
  const app = await openAt(server)
  const isKept = (): Promise<boolean> =>
    app.page.evaluate(
      async () => (await navigator.serviceWorker.getRegistration())?.active instanceof ServiceWorker,
    )
  const iconAsked = (): number => server.asked.filter((path) => path.endsWith('icon-512.png')).length
  await expect.poll(iconAsked, { timeout: 30_000 }).toBe(2)
  await app.page.waitForTimeout(1_000)
  expect(await isKept()).toBe(false)
  expect(await app.page.evaluate(() => caches.keys())).toEqual([])
  server.replace('icon-512.png', readFileSync(inRoot('dist', 'icon-512.png')))
  await app.page.reload()
  await expect.poll(isKept, { timeout: 30_000 }).toBe(true)
})

test('the page’s policy lets nothing out and runs nothing that came in', async () => {
  const heard: string[] = []
  const elsewhere = createServer((request, response) => {
    heard.push(request.url ?? '')
    response.writeHead(200, { 'access-control-allow-origin': '*' }).end('x')
  })
  await new Promise<void>((resolve) => {
    elsewhere.listen(0, '127.0.0.1', resolve)
  })
  const address = elsewhere.address()
  const url = typeof address === 'object' && address !== null ? `http://127.0.0.1:${address.port}/` : ''
  // Without the policy, the same requests do arrive.
  expect((await fetch(`${url}reachable`)).status).toBe(200)
  const server = await served()
  const app = await openApp({ baseUrl: server.url })
  await benchOf(app.page)
  const ran = await app.page.evaluate(async (to) => {
    const marks: Record<string, unknown> = globalThis as unknown as Record<string, unknown>
    const add = <K extends keyof HTMLElementTagNameMap>(
      name: K,
      change: (element: HTMLElementTagNameMap[K]) => void,
    ): void => {
      const element = document.createElement(name)
      change(element)
      document.body.append(element)
    }
    const outcome = await fetch(`${to}fetch`).then(
      () => 'sent',
      () => 'refused',
    )
    navigator.sendBeacon(`${to}beacon`, 'x')
    add('img', (img) => (img.src = `${to}img`))
    add('script', (script) => (script.src = `${to}script`))
    add('script', (script) => (script.textContent = 'globalThis.ranInline = true'))
    add('iframe', (frame) => (frame.src = `${to}frame`))
    add('link', (link) => Object.assign(link, { rel: 'stylesheet', href: `${to}style` }))
    add('div', (div) => (div.innerHTML = '<img src="x:" onerror="globalThis.ranHandler = true">'))
    await new Promise((resolve) => {
      setTimeout(resolve, 1_000)
    })
    return { outcome, inline: marks['ranInline'] ?? false, handler: marks['ranHandler'] ?? false }
  }, url)
  expect(ran).toEqual({ outcome: 'refused', inline: false, handler: false })
  expect(heard).toEqual(['/reachable'])
  await app.context.close()
  elsewhere.closeAllConnections()
  elsewhere.close()
})

test('the page names a manifest whose icons are there in the sizes that it says', async () => {
  const server = await served()
  const app = await openAt(server)
  const icons = await app.page.evaluate(async () => {
    const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]')
    const manifest = (await (await fetch(link?.href ?? '')).json()) as {
      icons: { src: string; sizes: string }[]
    }
    return Promise.all(
      manifest.icons.map(async ({ src, sizes }) => {
        const image = new Image()
        image.src = new URL(src, link?.href).href
        await image.decode()
        return { sizes, real: `${image.naturalWidth}x${image.naturalHeight}` }
      }),
    )
  })
  const pngs = icons.filter(({ sizes }) => sizes !== 'any')
  expect(pngs.map(({ real }) => real)).toEqual(pngs.map(({ sizes }) => sizes))
  expect(pngs.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(['192x192', '512x512']))
})
