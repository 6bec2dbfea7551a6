import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { appTest } from '../support/appTest'
import { openApp, saveScreenshot } from '../support/browser'
import { type PdfPage, printToPdf, readPdf, savePdf } from '../support/pdf'

const PAPERS = ['A4', 'A3', 'US Letter', 'Tabloid, 11 × 17 in'] as const

async function openPaper(page: Page, paper: (typeof PAPERS)[number]): Promise<void> {
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  await page.getByRole('navigation').getByRole('button', { name: /Paper/ }).click()
  await page.getByRole('radio', { name: paper, exact: true }).check()
  await page.locator('.sheet-preview svg').first().waitFor()
  await page.getByRole('button', { name: 'Print', exact: true }).and(page.locator(':enabled')).waitFor()
}

async function printed(page: Page, name: string): Promise<readonly PdfPage[]> {
  const bytes = await printToPdf(page)
  savePdf(bytes, name)
  return readPdf(bytes)
}

const wordsOf = (page: PdfPage): string =>
  page.texts.map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' ')

/** Texts of one page whose boxes lie over each other, as the PDF has them. */
function overlaps({ texts }: PdfPage): readonly string[] {
  const upright = texts.filter(({ angleRad, text }) => Math.abs(angleRad) < 0.01 && text.trim() !== '')
  return upright.flatMap((a, k) =>
    upright
      .slice(k + 1)
      .filter(
        (b) =>
          Math.abs(a.yMm - b.yMm) < 0.6 * Math.min(a.fontSizeMm, b.fontSizeMm) &&
          a.xMm + 0.1 < b.xMm + b.widthMm &&
          b.xMm + 0.1 < a.xMm + a.widthMm,
      )
      .map((b) => `${a.text} / ${b.text}`),
  )
}

appTest(
  'the whole bench set prints on every paper, nothing over the rim or over another text',
  async ({ desktop }) => {
    const { page } = desktop
    await openPaper(page, 'A4')
    for (const name of ['For the client to sign', 'Care, for the client']) {
      await page.getByRole('checkbox', { name }).check()
    }
    for (const paper of PAPERS) {
      await page.getByRole('radio', { name: paper, exact: true }).check()
      const pages = await printed(page, `bench set ${paper.replaceAll(/\W+/g, ' ')}`)
      const words = pages.map(wordsOf).join('\n')
      for (const title of ['Cut sheet', 'Slab sheet', 'Mix card', 'For approval', 'Care of the table']) {
        expect(words).toContain(title)
      }
      expect(words.split('Before you pour')).toHaveLength(2)
      for (const sheet of pages) {
        expect(overlaps(sheet)).toEqual([])
        const clipped = sheet.texts.filter(
          ({ xMm, yMm, widthMm, angleRad }) =>
            Math.abs(angleRad) < 0.01 &&
            (xMm < 6 || xMm + widthMm > sheet.widthMm - 6 || yMm > sheet.heightMm - 6),
        )
        expect(clipped).toEqual([])
      }
    }
    await page.getByRole('checkbox', { name: 'Cuts, drawn and listed' }).uncheck()
    expect((await printed(page, 'without cuts')).map(wordsOf).join(' ')).not.toContain('Cut list')
  },
)

/** Lines of the edge on a page: 0.5 mm wide, as places on the page. */
const edgeLines = (page: PdfPage): readonly (readonly (readonly [number, number])[])[] =>
  page.paths
    .filter(({ paint, lineWidthMm }) => paint === 'stroke' && Math.abs(lineWidthMm - 0.5) < 0.02)
    .flatMap(({ lines }) => lines.map(({ points }) => points))
    .filter((points) => points.length === 2)

/** Row and column from `Tile B3`. */
const tileOf = (page: PdfPage): readonly [row: number, column: number] => {
  const [, row = '', column = ''] = /Tile ([A-Z])(\d+)/.exec(wordsOf(page)) ?? []
  return [row.charCodeAt(0) - 65, Number(column) - 1]
}

test('template pages of the PDF put together close the slab’s outline, in true size', async () => {
  const { page, close } = await openApp({ context: { locale: 'en-GB' } })
  await openPaper(page, 'A4')
  await page.getByRole('button', { name: 'Lay out the pages' }).click()
  await page.getByText(/Until it is put away/).waitFor()
  const pages = await printed(page, 'template a4')
  expect(pages.length).toBeGreaterThan(10)
  // The frame of a tile is the widest grey rectangle; its size less the overlap is the step from tile to tile.
  const frames = pages.map((sheet) => {
    const boxes = sheet.paths
      .flatMap(({ lines }) => lines.map(({ points }) => points))
      .filter((points) => points.length >= 4 && points.length <= 5)
      .map((points) => ({
        left: Math.min(...points.map(([x]) => x)),
        top: Math.min(...points.map(([, y]) => y)),
        width: Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x)),
        height: Math.max(...points.map(([, y]) => y)) - Math.min(...points.map(([, y]) => y)),
      }))
      .filter(({ width, height }) => width < sheet.widthMm - 5 && height < sheet.heightMm - 5)
    const square = boxes.find(
      ({ width, height }) => Math.abs(width - 50) < 0.5 && Math.abs(height - 50) < 0.5,
    )
    const frame = boxes.toSorted((a, b) => b.width * b.height - a.width * a.height)[0]
    if (square === undefined || frame === undefined) throw new Error('a tile lacks its square or frame')
    expect(Math.abs(square.width / 50 - 1)).toBeLessThan(1e-3)
    expect(Math.abs(square.height / 50 - 1)).toBeLessThan(1e-3)
    return frame
  })
  const segments = pages.flatMap((sheet, k) => {
    const [row, column] = tileOf(sheet)
    const frame = frames[k]
    if (frame === undefined) return []
    const move = ([x, y]: readonly [number, number]) =>
      [x - frame.left + column * (frame.width - 15), y - frame.top + row * (frame.height - 15)] as const
    // The rule under the page's title is as wide as the edge of the wood, and lies outside the frame.
    const isInFrame = ([, y]: readonly [number, number]) =>
      y > frame.top - 0.1 && y < frame.top + frame.height + 0.1
    return edgeLines(sheet)
      .filter((points) => points.every(isInFrame))
      .map((points) => points.map(move))
  })
  // Each line that ends inside goes on at another line's end: an open end would be a gap.
  const ends = segments.flat()
  const open = segments.flatMap((line, k) =>
    line.filter(([x, y]) => !segments.some((other, j) => j !== k && distanceTo(other, [x, y]) < 0.15)),
  )
  expect(open).toEqual([])
  // The size that the cut sheet states, within its own rounding and 0.1 %.
  const xs = ends.map(([x]) => x)
  const stated = Number(/Slab: (\d+) mm/.exec(await statedSize(page))?.[1])
  expect(Math.abs((Math.max(...xs) - Math.min(...xs)) / stated - 1)).toBeLessThan(1e-3)
  await page.getByRole('button', { name: 'Put it away' }).click()
  expect((await printed(page, 'after template')).map(wordsOf).join(' ')).toContain('Cut sheet')
  await close()
})

const distanceTo = (
  line: readonly (readonly [number, number])[],
  [x, y]: readonly [number, number],
): number => {
  const [[ax, ay] = [0, 0], [bx, by] = [0, 0]] = line
  const length2 = (bx - ax) ** 2 + (by - ay) ** 2
  const t =
    length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length2))
  return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay))
}

async function statedSize(page: Page): Promise<string> {
  const texts = await page.locator('.sheet-preview').first().locator('text').allTextContents()
  return texts.join(' ').replaceAll('\u00a0', ' ')
}

appTest('files are taken away in true size, named after the plan', async ({ desktop }) => {
  const { page } = desktop
  await openPaper(page, 'A4')
  for (const [button, ending] of [
    ['Drawing, SVG', '-slab.svg'],
    ['Drawing, DXF in mm', '-slab.dxf'],
    ['Cuts, CSV', '-cuts.csv'],
    ['Parts, CSV', '-parts.csv'],
    ['All results, JSON', '-results.json'],
  ] as const) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: button }).click(),
    ])
    expect(download.suggestedFilename()).toContain(ending)
  }
  await saveScreenshot(page, 'take away')
})

appTest('the client’s picture is drawn within a second without blocking the page', async ({ desktop }) => {
  const { page } = desktop
  await openPaper(page, 'A4')
  const canvas = page.locator('.client-picture')
  await canvas.and(page.locator('[data-standing="drawn"]')).waitFor()
  await page.getByRole('radio', { name: 'Pearl' }).scrollIntoViewIfNeeded()
  // The longest gap between frames while the picture is drawn anew, and how long until it stands.
  const measured = await page.evaluate(async () => {
    const radio = [...document.querySelectorAll<HTMLInputElement>('input[type="radio"]')].find(
      ({ value }) => value === 'pearl',
    )
    const shown = document.querySelector<HTMLCanvasElement>('.client-picture')
    if (!radio || !shown) throw new Error('no picture')
    let longest = 0
    let last = performance.now()
    const start = last
    let hasBegun = false
    radio.click()
    while (performance.now() - start < 5000) {
      await new Promise(requestAnimationFrame)
      const now = performance.now()
      longest = Math.max(longest, now - last)
      last = now
      const { standing } = shown.dataset
      if (standing === 'drawing') hasBegun = true
      if (hasBegun && standing === 'drawn') break
    }
    const pixels = shown.getContext('2d')?.getImageData(0, 0, shown.width, shown.height).data ?? []
    const colours = new Set<string>()
    for (let at = 0; at < pixels.length; at += 4 * 997) {
      colours.add([0, 1, 2].map((part) => (pixels[at + part] ?? 0) >> 4).join(' '))
    }
    return { totalMs: last - start, longest, colours: colours.size, width: shown.width }
  })
  console.info(`picture: ${JSON.stringify(measured)}`)
  expect(measured.totalMs).toBeLessThan(1000)
  expect(measured.longest).toBeLessThan(200)
  // Grain has many shades; a picture of bare fills has a handful.
  expect(measured.colours).toBeGreaterThan(40)
  await canvas.scrollIntoViewIfNeeded()
  await saveScreenshot(page, 'client picture')
})
