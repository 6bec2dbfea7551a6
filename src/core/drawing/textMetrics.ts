import metrics from './sourceSans3.json'
import type { TextWeight } from './sheet'

/** The one font of the sheets, by the name that the browser knows it under. */
export const SHEET_FONT_FAMILY = metrics.family
/** CSS weights of the two cuts that are shipped. */
export const SHEET_FONT_WEIGHT: Readonly<Record<TextWeight, number>> = metrics.weights

/** Heights over the baseline as shares of the font size; `inkBottom` is below it and negative. */
export const CAP_HEIGHT = metrics.capHeight / metrics.unitsPerEm
export const INK_TOP = metrics.inkTop / metrics.unitsPerEm
export const INK_BOTTOM = metrics.inkBottom / metrics.unitsPerEm

/** A character that the font lacks is drawn in another one: taken as wide as the widest usual letter, one em. */
const UNKNOWN_WIDTH = 1
const COMBINING = /\p{M}/u

function widthTable(charactersByWidth: Readonly<Record<string, string>>): ReadonlyMap<string, number> {
  const table = new Map<string, number>()
  for (const [width, characters] of Object.entries(charactersByWidth)) {
    for (const character of characters) table.set(character, Number(width) / metrics.unitsPerEm)
  }
  return table
}

// Marked as pure so that a bundler may leave the sheets out of what the page loads first.
const WIDTHS: Readonly<Record<TextWeight, ReadonlyMap<string, number>>> = {
  regular: /* @__PURE__ */ widthTable(metrics.charactersByWidth.regular),
  bold: /* @__PURE__ */ widthTable(metrics.charactersByWidth.bold),
}

function characterWidth(character: string, weight: TextWeight): number {
  const known = WIDTHS[weight].get(character)
  if (known !== undefined) return known
  return COMBINING.test(character) ? 0 : UNKNOWN_WIDTH
}

/**
 * What the sheets write for a text: accents joined to their letters, every space a plain one, no control signs.
 * Measuring and drawing both go through it, so that they agree.
 */
export const printableText = (text: string): string => (PLAIN.test(text) ? text : cleaned(text))

/** Most texts: nothing in them needs care, and a layout measures thousands of times. */
const PLAIN = /^[!-~]*(?: [!-~]+)*$/

const cleaned = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\s\u00a0\u2007\u2009\u202f]+/gu, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Noncharacter_Code_Point}]/gu, '')

/**
 * Width of one line of text, without kerning and ligatures (the sheets switch both off).
 * @param sizeMm  font size (em), mm
 * @returns mm; a character that the font lacks counts as one em
 * Method: sum of the font's advance widths. Rules: DRW-2.
 */
export function textWidthMm(text: string, sizeMm: number, weight: TextWeight = 'regular'): number {
  let ems = 0
  for (const character of printableText(text)) ems += characterWidth(character, weight)
  return ems * sizeMm
}
