import { fileURLToPath } from 'node:url'
import { type Font, openSync } from 'fontkit'
import { describe, expect, it } from 'vitest'
import metrics from './sourceSans3.json'
import { CAP_HEIGHT, INK_BOTTOM, INK_TOP, SHEET_FONT_WEIGHT, printableText, textWidthMm } from './textMetrics'

const SUBSETS = ['latin', 'latin-ext', 'greek', 'cyrillic', 'vietnamese']

/** The WOFF2 files that are shipped, read by fontkit; the table was written from the WOFF files by other code. */
const fontsOf = (weight: number): readonly Font[] =>
  SUBSETS.map((subset) => {
    const file = `../../../node_modules/@fontsource/source-sans-3/files/source-sans-3-${subset}-${weight}-normal.woff2`
    return openSync(fileURLToPath(new URL(file, import.meta.url))) as Font
  })

const fonts = { regular: fontsOf(SHEET_FONT_WEIGHT.regular), bold: fontsOf(SHEET_FONT_WEIGHT.bold) }

const advance = (character: string, weight: 'regular' | 'bold'): number => {
  const code = character.codePointAt(0)!
  const font = fonts[weight].find((candidate) => candidate.hasGlyphForCodePoint(code))
  if (!font) throw new Error(`no font for ${character}`)
  return font.glyphForCodePoint(code).advanceWidth
}

describe('the font table', () => {
  it.each(['regular', 'bold'] as const)('DRW-2 has the advances of the shipped %s font', (weight) => {
    const rows = Object.entries(metrics.charactersByWidth[weight])
    expect(rows.flatMap(([, characters]) => [...characters]).length).toBeGreaterThan(500)
    const wrong = rows.flatMap(([width, characters]) =>
      [...characters].filter((character) => advance(character, weight) !== Number(width)),
    )
    expect(wrong).toEqual([])
  })

  it('DRW-2 has the heights of the shipped font', () => {
    const [latin] = fonts.regular
    expect(metrics.unitsPerEm).toBe(latin!.unitsPerEm)
    expect(CAP_HEIGHT * 1000).toBe(latin!.capHeight)
    const boxes = [...'AHdlgpqy0123456789()/'].flatMap((character) =>
      [fonts.regular[0]!, fonts.bold[0]!].map(
        (font) => font.glyphForCodePoint(character.codePointAt(0)!).bbox,
      ),
    )
    expect(INK_TOP * 1000).toBeGreaterThanOrEqual(Math.max(...boxes.map(({ maxY }) => maxY)))
    expect(INK_BOTTOM * 1000).toBeLessThanOrEqual(Math.min(...boxes.map(({ minY }) => minY)))
  })

  it('DRW-2 has figures of one width, so that columns of figures stand in line', () => {
    expect(new Set([...'0123456789'].map((figure) => textWidthMm(figure, 1))).size).toBe(1)
  })
})

describe('textWidthMm', () => {
  it.each(['7′ 2 13/16″', 'Snap a chalk line from mark D', '1250 mm × 35 3/8″', 'Ölfaß, dąb, дуб'])(
    'DRW-2 is the sum of the advances that fontkit finds for %s',
    (text) => {
      const ems = [...text].reduce((sum, character) => sum + advance(character, 'bold') / 1000, 0)
      expect(textWidthMm(text, 3.8, 'bold')).toBeCloseTo(ems * 3.8, 9)
    },
  )

  it('DRW-2 counts one em for a sign that the font lacks and nothing for a loose accent', () => {
    expect(textWidthMm('木', 4)).toBe(4)
    expect(textWidthMm('q\u0302', 4)).toBe(textWidthMm('q', 4))
  })

  it('measures what is printed: joined accents, plain spaces, no control signs', () => {
    expect(printableText('e\u0301\u00a0a\n\tb\u0007\u202e\ud800')).toBe('é a b')
  })
})
