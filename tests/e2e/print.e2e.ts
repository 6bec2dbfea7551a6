import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { textWidthMm } from '../../src/core/drawing'
import { parseLength } from '../../src/core/units'
import { appTest } from '../support/appTest'
import { openApp, saveScreenshot } from '../support/browser'
import { type PdfPage, printToPdf, readPdf, savePdf } from '../support/pdf'
import type { PdfPath } from '../support/pdfPaths'

/** Opens the stage with the sheets of the demo job, on a paper. */
async function openPaper(page: Page, paper: 'A4' | 'US Letter'): Promise<void> {
  // The program opens on the demo at the stage where its work goes on; before that, a click would be undone.
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  await page.getByRole('navigation').getByRole('button', { name: /Paper/ }).click()
  await page.getByRole('radio', { name: paper }).check()
  const first = page.locator('.sheet-preview svg').first()
  await first.waitFor()
  const width = paper === 'A4' ? /^(210|297)mm$/ : /^(215\.9|279\.4)mm$/
  await expect.poll(async () => first.getAttribute('width')).toMatch(width)
  await page.evaluate(async () => {
    await document.fonts.ready
  })
}

async function printed(page: Page, name: string): Promise<readonly PdfPage[]> {
  const bytes = await printToPdf(page)
  savePdf(bytes, name)
  return readPdf(bytes)
}

const wordsOf = (page: PdfPage): string =>
  page.texts.map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' ')

const extentMm = (path: PdfPath, axis: 0 | 1): number => {
  const places = path.lines.flatMap(({ points }) => points.map((point) => point[axis]))
  return Math.max(...places) - Math.min(...places)
}

/** Length of the scale bar by its frame: the only line on a sheet that is long and 2 mm high. */
const barOf = (page: PdfPage): number => {
  const bar = page.paths.find(
    (path) => path.paint === 'stroke' && Math.abs(extentMm(path, 1) - 2) < 0.05 && extentMm(path, 0) > 90,
  )
  if (bar === undefined) throw new Error('the page has no scale bar')
  return extentMm(bar, 0)
}

/** Edge of the wood: the drawing's one line 0.5 mm wide with many points. */
const outlineOf = (page: PdfPage): PdfPath => {
  const outline = page.paths.find(
    (path) =>
      path.paint === 'stroke' &&
      Math.abs(path.lineWidthMm - 0.5) < 0.02 &&
      (path.lines[0]?.points.length ?? 0) > 20,
  )
  if (outline === undefined) throw new Error('the page has no outline')
  return outline
}

appTest(
  'the sheets print on A4 in true size, one page each, without the program round them',
  async ({ desktop }) => {
    const { page } = desktop
    await openPaper(page, 'A4')
    await saveScreenshot(page, 'paper stage')
    const shown = await page.locator('.sheet-preview').count()
    const pages = await printed(page, 'cut sheets a4')
    expect(pages).toHaveLength(shown)
    for (const [k, sheet] of pages.entries()) {
      // ISO 216: 297 × 210 mm.
      expect(Math.abs(sheet.widthMm / 297 - 1)).toBeLessThan(1e-3)
      expect(Math.abs(sheet.heightMm / 210 - 1)).toBeLessThan(1e-3)
      expect(wordsOf(sheet)).toContain(`Page ${k + 1} of ${shown}`)
      expect(wordsOf(sheet)).not.toContain('Waneline')
    }
  },
)

/** A maker in Britain works in mm, one in the United States in inches. */
const MAKERS = [
  { locale: 'en-GB', paper: 'A4', barMm: 100, says: '100 mm', display: { system: 'mm' } },
  {
    locale: 'en-US',
    paper: 'US Letter',
    barMm: 4 * 25.4,
    says: '4 in',
    display: { system: 'inch', fraction: 16 },
  },
] as const

test.each(MAKERS)('bar and slab measure true on $paper', async ({ locale, paper, barMm, says, display }) => {
  const { page, close } = await openApp({ context: { locale } })
  await openPaper(page, paper)
  const [first] = await printed(page, `cut sheets ${paper}`)
  if (first === undefined) throw new Error('nothing was printed')
  const words = wordsOf(first)
  expect(words).toContain(`This bar measures ${says} on paper`)
  expect(Math.abs(barOf(first) / barMm - 1)).toBeLessThan(1e-3)
  const ratio = Number(/Scale 1:([\d.]+)/.exec(words)?.[1])
  const sizes = /Slab: (.+?) × (.+?), /.exec(words)?.slice(1) ?? []
  const outline = outlineOf(first)
  expect(sizes).toHaveLength(2)
  sizes.forEach((size, axis) => {
    // The figure without how sure it is: `2203 mm ± 16 mm`.
    const stated = parseLength(size.split('±')[0]?.trim() ?? '', display)
    if (!stated.ok) throw new Error(`not a length: ${size}`)
    const drawnMm = extentMm(outline, axis === 0 ? 0 : 1) * ratio
    // Sizes are printed to the mm or the sixteenth of an inch: half of that is their own rounding.
    const roundingMm = display.system === 'mm' ? 0.5 : 25.4 / 32
    expect(Math.abs(drawnMm - stated.value)).toBeLessThan(roundingMm + 1e-3 * stated.value)
  })
  await close()
})

appTest('Letter prints as Letter: 11 × 8.5 in, to a tenth of a per cent', async ({ desktop }) => {
  await openPaper(desktop.page, 'US Letter')
  const pages = await printed(desktop.page, 'cut sheets letter')
  for (const sheet of pages) {
    expect(Math.abs(sheet.widthMm / 279.4 - 1)).toBeLessThan(1e-3)
    expect(Math.abs(sheet.heightMm / 215.9 - 1)).toBeLessThan(1e-3)
  }
})

appTest('every text is as wide in Chromium as the layout took it to be', async ({ desktop }) => {
  const { page } = desktop
  await openPaper(page, 'A4')
  const texts = await page.locator('.sheet-preview text').evaluateAll((elements) =>
    elements.map((element) => ({
      text: element.textContent ?? '',
      sizeMm: Number(element.getAttribute('font-size')),
      weight: element.getAttribute('font-weight'),
      widthMm: (element as SVGTextElement).getComputedTextLength(),
    })),
  )
  expect(texts.length).toBeGreaterThan(100)
  const off = texts.filter(({ text, sizeMm, weight, widthMm }) => {
    const laidOut = textWidthMm(text, sizeMm, weight === '600' ? 'bold' : 'regular')
    return Math.abs(widthMm - laidOut) > 0.02 + 0.004 * laidOut
  })
  expect(off).toEqual([])
})

appTest('a plan named like markup prints its name and nothing else', async ({ desktop }) => {
  const { page } = desktop
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  const name = '<img src=x onerror=alert(1)> & "co"'
  await page.locator('.plan-name input').fill(name)
  await page.locator('.plan-name input').press('Enter')
  await openPaper(page, 'A4')
  await expect
    .poll(async () => page.locator('.sheet-preview text', { hasText: 'onerror' }).count())
    .toBeGreaterThan(0)
  expect(await page.locator('.sheet-preview img, .print-job img').count()).toBe(0)
})

appTest('the browser’s own print command gives the sheets at any stage', async ({ desktop }) => {
  const { page } = desktop
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  // The sheets and their font are fetched once the first view is up.
  const isFontThere = (): Promise<boolean> =>
    page.evaluate(() => [...document.fonts].some(({ status }) => status === 'loaded'))
  await expect.poll(isFontThere, { timeout: 15_000 }).toBe(true)
  // The sheets are taken up a moment after their font has come.
  const words = async (): Promise<string> =>
    (await printed(page, 'cut sheets from the table stage')).map(wordsOf).join(' ')
  await expect.poll(words, { timeout: 15_000 }).toMatch(/Page 1 of \d/)
  expect(await page.locator('.print-job').count()).toBe(0)
})
