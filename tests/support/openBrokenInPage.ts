import type { FileChooser, Page } from 'playwright-core'
import { type BrokenFile, SCRIPT_MARK } from './brokenFiles'

/** Fails on anything that a script in a file could do: a dialog, a mark, a page of its own. */
export function watchForScripts(page: Page): readonly string[] {
  const seen: string[] = []
  page.on('dialog', (dialog) => {
    seen.push(`dialog: ${dialog.message()}`)
    void dialog.dismiss()
  })
  page.on('popup', (popup) => seen.push(`popup: ${popup.url()}`))
  return seen
}

/** What the page says about a file: a message, the list of what was lost, or a question. */
const SAYINGS = '.notice p, .lost li, dialog[open] p'

async function putAside(page: Page): Promise<void> {
  if ((await page.locator('dialog[open]').count()) > 0) await page.keyboard.press('Escape')
  const lost = page.locator('.lost .button')
  if ((await lost.count()) > 0) await lost.click()
  const close = page.locator('.notice .button')
  if ((await close.count()) > 0) await close.first().click()
}

async function choosingFile(page: Page): Promise<FileChooser | null> {
  const choosing = page.waitForEvent('filechooser', { timeout: 10_000 }).catch(() => null)
  await page.getByRole('button', { name: /^Menu/ }).click()
  await page.getByText('Open a photo or a saved job').first().click()
  return choosing
}

/** @returns what the page said, empty where the file simply opened; throws when the page broke or ran something */
export async function openBrokenInPage(
  page: Page,
  file: BrokenFile,
  whose: string,
): Promise<readonly string[]> {
  await putAside(page)
  const titleBefore = await page.title()
  const chooser = await choosingFile(page)
  if (chooser === null) throw new Error(`${whose}: no file can be chosen any more`)
  await chooser.setFiles({
    name: file.name.replaceAll('/', '_').slice(0, 120),
    mimeType: '',
    buffer: Buffer.from(file.bytes),
  })
  await page
    .waitForFunction(
      ({ sayings, title }) => document.querySelector(sayings) !== null || document.title !== title,
      { sayings: SAYINGS, title: titleBefore },
      { timeout: 15_000 },
    )
    // A file under the same name as the job on the bench opens without a word.
    .catch(() => undefined)
  await page.locator('.running-jobs li').first().waitFor({ state: 'detached' })
  const said = await page.locator(SAYINGS).allInnerTexts()
  if (said.some((text) => /could not be accepted|undefined|NaN|\[object/.test(text))) {
    throw new Error(`${whose}: said ${said.join(' / ')}`)
  }
  const hasRun = await page.evaluate((mark) => mark in globalThis, SCRIPT_MARK)
  if (hasRun) throw new Error(`${whose}: a script of the file ran`)
  const isThere = await page.locator('.workbench').isVisible()
  const failed = await page.getByText('This part of the screen failed').count()
  if (!isThere || failed > 0) throw new Error(`${whose}: the page broke`)
  return said
}
