import { execFileSync } from 'node:child_process'
import { readdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { Page } from 'playwright-core'
import { getDocument, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { reportPath } from './browser'
import { type PdfPath, pathsOf } from './pdfPaths'

/** PDF measures in points of 1/72 inch (ISO 32000, 8.3.2.3). */
const MM_PER_POINT = 25.4 / 72

export interface PdfText {
  readonly text: string
  /** Start of the baseline, from the page's top-left corner, y down. */
  readonly xMm: number
  readonly yMm: number
  readonly widthMm: number
  readonly fontSizeMm: number
  /** 0 for text that reads left to right, positive when it is turned towards the page's bottom. */
  readonly angleRad: number
}

export interface PdfPage {
  readonly widthMm: number
  readonly heightMm: number
  readonly texts: readonly PdfText[]
  /** Everything drawn as a line or a shape, in drawing order; mm from the top-left corner, y down. */
  readonly paths: readonly PdfPath[]
}

/** Prints what the page shows as the browser's print dialogue would, with the paper sizes that its CSS asks for. */
export const printToPdf = async (
  page: Page,
  options: { readonly format?: 'A4' | 'Letter' } = {},
): Promise<Uint8Array> =>
  new Uint8Array(await page.pdf({ preferCSSPageSize: true, printBackground: true, ...options }))

const textsOf = async (page: PDFPageProxy, heightPt: number): Promise<readonly PdfText[]> => {
  const { items } = await page.getTextContent()
  return items.flatMap((item) => {
    if (!('str' in item) || item.str.trim() === '') return []
    const [a, b, , , x, y] = item.transform as readonly number[]
    return [
      {
        text: item.str,
        xMm: (x ?? 0) * MM_PER_POINT,
        yMm: (heightPt - (y ?? 0)) * MM_PER_POINT,
        widthMm: item.width * MM_PER_POINT,
        fontSizeMm: Math.hypot(a ?? 0, b ?? 0) * MM_PER_POINT,
        angleRad: Math.atan2(-(b ?? 0), a ?? 0) + 0,
      },
    ]
  })
}

const pageOf = async (page: PDFPageProxy): Promise<PdfPage> => {
  const { width, height } = page.getViewport({ scale: 1 })
  const { fnArray, argsArray } = await page.getOperatorList()
  // From PDF's bottom-left origin in points to ours.
  const toMm = [MM_PER_POINT, 0, 0, -MM_PER_POINT, 0, height * MM_PER_POINT] as const
  return {
    widthMm: width * MM_PER_POINT,
    heightMm: height * MM_PER_POINT,
    texts: await textsOf(page, height),
    paths: pathsOf(fnArray, argsArray as readonly unknown[], toMm),
  }
}

/** Reads the pages of a PDF: their size, their words with places, and their lines, all in mm. */
export const readPdf = async (bytes: Uint8Array): Promise<readonly PdfPage[]> => {
  // The reader takes the bytes away from us, so it gets a copy.
  const loading = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 })
  const document = await loading.promise
  const pages: PdfPage[] = []
  for (let number = 1; number <= document.numPages; number++) {
    pages.push(await pageOf(await document.getPage(number)))
  }
  await loading.destroy()
  return pages
}

/**
 * Saves a PDF and a picture of each page in reports/pdf, to be looked at.
 * @returns paths of the pictures; none where the program pdftoppm is not installed
 */
export const savePdf = (bytes: Uint8Array, name: string, dpi = 110): readonly string[] => {
  const path = reportPath('pdf', `${name}.pdf`)
  writeFileSync(path, bytes)
  const stem = path.slice(0, -'.pdf'.length)
  try {
    execFileSync('pdftoppm', ['-png', '-r', String(dpi), path, stem], { stdio: 'ignore' })
  } catch {
    return []
  }
  const folder = dirname(path)
  return readdirSync(folder)
    .map((file) => join(folder, file))
    .filter((file) => file.startsWith(`${stem}-`) && file.endsWith('.png'))
    .sort()
}
