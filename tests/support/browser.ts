import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type ConsoleMessage,
  type Page,
} from 'playwright-core'
import { afterAll, inject } from 'vitest'

export type Device = 'desktop' | 'phone' | 'phone-sharp'

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const

const devices: Readonly<Record<Device, BrowserContextOptions>> = {
  desktop: { viewport: { width: 1440, height: 900 } },
  phone: { ...phone, deviceScaleFactor: 2 },
  'phone-sharp': { ...phone, deviceScaleFactor: 3 },
}

let shared: Promise<Browser> | undefined

/** The one browser of the run, that tests/e2e/globalSetup.ts started. Left again when the test file is done. */
const sharedBrowser = (): Promise<Browser> => {
  shared ??= chromium.connect(inject('browserEndpoint'))
  return shared
}

afterAll(async () => {
  await (await shared)?.close()
  shared = undefined
})

const watched = new Set(['error', 'warning', 'assert'])

const said = (message: ConsoleMessage): string =>
  `${message.type()}: ${message.text()} (${message.location().url}:${message.location().lineNumber})`

/** Collects what must not be said: console errors and warnings, uncaught errors, and requests to other places. */
export class ConsoleWatch {
  readonly #complaints: string[] = []

  watch(page: Page, ownOrigin: string): void {
    page.on('console', (message) => {
      if (watched.has(message.type())) this.#complaints.push(said(message))
    })
    page.on('pageerror', (error) => this.#complaints.push(`uncaught: ${error.stack ?? error.message}`))
    page.on('request', (request) => {
      const url = request.url()
      const isOwn = url.startsWith(ownOrigin) || url.startsWith('blob:') || url.startsWith('data:')
      if (!isOwn) this.#complaints.push(`request to another place: ${url}`)
    })
  }

  get complaints(): readonly string[] {
    return this.#complaints
  }

  /** @throws Error with everything that was said since the page opened, when there was anything */
  expectQuiet(): void {
    if (this.#complaints.length === 0) return
    throw new Error(`The console is not empty:\n${this.#complaints.join('\n')}`)
  }
}

export interface OpenOptions {
  readonly device?: Device
  /** What follows the address, e.g. `?x=1`. */
  readonly path?: string
  readonly context?: BrowserContextOptions
  /** Where else than on the run's own server the program is; ends in a slash. */
  readonly baseUrl?: string
  /** Opens a second tab in the context of another page: same storage, same watch. */
  readonly beside?: OpenedApp
}

export interface OpenedApp {
  readonly page: Page
  readonly context: BrowserContext
  readonly console: ConsoleWatch
  /** Closes the page and its context. @throws Error when the console was not empty */
  readonly close: () => Promise<void>
}

const newContext = async ({ device = 'desktop', context }: OpenOptions): Promise<BrowserContext> => {
  const browser = await sharedBrowser()
  return browser.newContext({
    locale: 'en-US',
    timezoneId: 'UTC',
    acceptDownloads: true,
    ...devices[device],
    ...context,
  })
}

/**
 * Opens the built program in a browser context of its own (empty storage), or as a further tab beside another.
 * Whoever opens it closes it; `appTest` does that by itself.
 */
export const openApp = async (options: OpenOptions = {}): Promise<OpenedApp> => {
  const baseUrl = options.baseUrl ?? inject('baseUrl')
  const context = options.beside?.context ?? (await newContext(options))
  const page = await context.newPage()
  const consoleWatch = options.beside?.console ?? new ConsoleWatch()
  consoleWatch.watch(page, baseUrl)
  await page.goto(`${baseUrl}${options.path ?? ''}`, { waitUntil: 'load' })
  const close = async (): Promise<void> => {
    await (options.beside ? page.close() : context.close())
    consoleWatch.expectQuiet()
  }
  return { page, context, console: consoleWatch, close }
}

const reportsFolder = fileURLToPath(new URL('../../reports/', import.meta.url))

/** The path of a file in reports/ (git-ignored), whose folder is made when it is missing. */
export const reportPath = (folder: string, fileName: string): string => {
  mkdirSync(`${reportsFolder}${folder}`, { recursive: true })
  return `${reportsFolder}${folder}/${fileName.replaceAll(/[^\w.-]+/g, '-')}`
}

/** Saves what the page shows as reports/screenshots/NAME.png, to be looked at. @returns its path */
export const saveScreenshot = async (page: Page, name: string, fullPage = false): Promise<string> => {
  const path = reportPath('screenshots', `${name}.png`)
  await page.screenshot({ path, fullPage })
  return path
}
