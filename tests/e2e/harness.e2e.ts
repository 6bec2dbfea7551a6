import { expect } from 'vitest'
import { appTest } from '../support/appTest'
import { ConsoleWatch, openApp, type OpenedApp } from '../support/browser'
import { decodeJpeg, photoJpeg, photoPixels, smallPng, smallWebp } from '../support/jpegs'
import { printToPdf, readPdf, savePdf } from '../support/pdf'
import { touchDrag, touchPinch } from '../support/touch'

// These tests prove that the tools of the other end-to-end tests can fail.

appTest('an error, a warning and an uncaught error on the page are noticed', async () => {
  const { page, console: watch, context } = await openApp()
  await page.evaluate(() => {
    console.error('broken on purpose')
    console.warn('doubtful on purpose')
    setTimeout(() => {
      throw new Error('thrown on purpose')
    })
  })
  await expect.poll(() => watch.complaints.length).toBe(3)
  expect(() => watch.expectQuiet()).toThrow(
    /broken on purpose[\s\S]*doubtful on purpose[\s\S]*thrown on purpose/,
  )
  await context.close()
})

appTest('a request to another place is stopped by the page and noticed', async () => {
  const { page, console: watch, context } = await openApp()
  const reached = await page.evaluate(() =>
    fetch('http://outside.invalid/').then(
      () => true,
      () => false,
    ),
  )
  expect(reached).toBe(false)
  expect(watch.complaints.join('\n')).toContain('Content Security Policy')
  await context.close()
})

appTest('an empty console is quiet', () => {
  expect(() => new ConsoleWatch().expectQuiet()).not.toThrow()
})

appTest('a printed drawing is measured true in size, place, line width and text', async ({ desktop }) => {
  const { page } = desktop
  await page.setContent(`<style>@page { size: A4; margin: 0 } body { margin: 0 } svg { display: block }</style>
    <svg width="210mm" height="297mm" viewBox="0 0 210 297" xmlns="http://www.w3.org/2000/svg">
      <path d="M30 40 L130 40" stroke="black" stroke-width="0.5" />
      <g transform="translate(20 100) rotate(90)"><path d="M0 0 L50 0" stroke="black" stroke-width="1" stroke-dasharray="4 2" /></g>
      <circle cx="100" cy="150" r="25" fill="none" stroke="black" stroke-width="0.3" />
      <text x="60" y="200" font-size="5">Kerf 3 mm</text>
    </svg>`)
  const bytes = await printToPdf(page)
  savePdf(bytes, 'harness')
  const [sheet, ...more] = await readPdf(bytes)
  if (!sheet) throw new Error('no page')
  expect(more).toHaveLength(0)
  expect(sheet.widthMm).toBeCloseTo(210, 0)
  expect(sheet.heightMm).toBeCloseTo(297, 0)

  const strokes = sheet.paths.filter(({ paint }) => paint === 'stroke')
  const lengthMm = (i: number): number => {
    const [[x0, y0], [x1, y1]] = strokes[i]!.lines[0]!.points as [[number, number], [number, number]]
    return Math.hypot(x1 - x0, y1 - y0)
  }
  expect(strokes).toHaveLength(2)
  expect(lengthMm(0)).toBeCloseTo(100, 1)
  expect(strokes[0]!.lines[0]!.points[0]![0]).toBeCloseTo(30, 1)
  expect(strokes[0]!.lines[0]!.points[0]![1]).toBeCloseTo(40, 1)
  expect(strokes[0]!.lineWidthMm).toBeCloseTo(0.5, 2)
  for (const [x, y] of strokes[1]!.lines[0]!.points) {
    expect(Math.hypot(x - 100, y - 150)).toBeCloseTo(25, 1)
  }
  const dashes = sheet.paths.find(({ paint }) => paint === 'fill')!.lines
  expect(dashes).toHaveLength(9)
  expect(Math.min(...dashes[1]!.points.map(([, y]) => y))).toBeCloseTo(106, 1)
  expect(Math.max(...dashes[8]!.points.map(([, y]) => y))).toBeCloseTo(150, 1)

  const words = sheet.texts.map(({ text }) => text).join('')
  expect(words).toBe('Kerf 3 mm')
  expect(sheet.texts[0]!.xMm).toBeCloseTo(60, 0)
  expect(sheet.texts[0]!.yMm).toBeCloseTo(200, 0)
  expect(sheet.texts[0]!.fontSizeMm).toBeCloseTo(5, 1)
})

appTest('fingers reach the page as touches, one for a drag and two for a pinch', async ({ phone }) => {
  const { page } = phone
  // A bare sheet over the page: what lies below may scroll, and a browser that scrolls drops most moves.
  await page.evaluate(async () => {
    const seen: string[] = []
    Object.assign(globalThis, { seen })
    const sheet = document.createElement('div')
    sheet.style.cssText = 'position: fixed; inset: 0; z-index: 1000; touch-action: none'
    sheet.addEventListener('touchmove', (event) => {
      seen.push(`${event.touches.length} ${Math.round(event.touches[0]?.clientX ?? 0)}`)
    })
    document.body.append(sheet)
    const nextFrame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve))
    for (let frame = 0; frame < 2; frame++) await nextFrame()
  })
  const seen = (): Promise<string[]> => page.evaluate(() => Reflect.get(globalThis, 'seen') as string[])
  await touchDrag(page, { x: 100, y: 300 }, { x: 200, y: 300 })
  await expect.poll(async () => (await seen()).at(-1)).toBe('1 200')
  await touchPinch(page, { x: 200, y: 300 }, 2)
  await expect.poll(async () => (await seen()).at(-1)).toBe('2 120')
})

/** What the browser makes of a picture: its upright size, and the mean colour around some places. */
const decodedByBrowser = async ({ page }: OpenedApp, bytes: Uint8Array, type: string) => {
  const picture = await page.evaluate(
    async ({ base64, mime }) => {
      const blob = new Blob([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], { type: mime })
      const bitmap = await createImageBitmap(blob)
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
      const context = canvas.getContext('2d')
      context?.drawImage(bitmap, 0, 0)
      const data = context?.getImageData(0, 0, bitmap.width, bitmap.height).data
      const reader = new FileReader()
      const url = await new Promise<string>((resolve) => {
        reader.onload = () => resolve(reader.result as string)
        reader.readAsDataURL(new Blob([data ?? new Uint8ClampedArray()]))
      })
      return { widthPx: bitmap.width, heightPx: bitmap.height, base64: url.slice(url.indexOf(',') + 1) }
    },
    { base64: Buffer.from(bytes).toString('base64'), mime: type },
  )
  return { ...picture, rgba: new Uint8Array(Buffer.from(picture.base64, 'base64')) }
}

const meanDifference = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += Math.abs((a[i] ?? 0) - (b[i] ?? 0))
  return sum / a.length
}

appTest('the browser reads the PNG and the WebP pixel by pixel as they were made', async ({ desktop }) => {
  const made = photoPixels('d2', '0.75 MP')
  for (const [bytes, type] of [
    [smallPng(), 'image/png'],
    [smallWebp(), 'image/webp'],
  ] as const) {
    const seen = await decodedByBrowser(desktop, bytes, type)
    expect([seen.widthPx, seen.heightPx]).toEqual([made.widthPx, made.heightPx])
    expect(meanDifference(seen.rgba, made.rgba)).toBe(0)
  }
})

appTest(
  'the browser turns each of the eight orientations upright to the same picture',
  async ({ desktop }) => {
    const upright = decodeJpeg(photoJpeg({ photo: 'd4', size: '0.75 MP', orientation: 1 }))
    for (const orientation of [1, 2, 3, 4, 5, 6, 7, 8] as const) {
      const seen = await decodedByBrowser(
        desktop,
        photoJpeg({ photo: 'd4', size: '0.75 MP', orientation }),
        'image/jpeg',
      )
      expect([seen.widthPx, seen.heightPx]).toEqual([upright.widthPx, upright.heightPx])
      // Each was compressed on its own, so single pixels differ a little.
      expect(meanDifference(seen.rgba, upright.rgba)).toBeLessThan(3)
    }
  },
)
