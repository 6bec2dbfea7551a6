import type { TextWeight } from './sheet'
import { printableText, textWidthMm } from './textMetrics'

export interface TextRoom {
  readonly sizeMm: number
  readonly weight?: TextWeight
  readonly maxWidthMm: number
}

const fits = (text: string, { sizeMm, weight, maxWidthMm }: TextRoom): boolean =>
  textWidthMm(text, sizeMm, weight) <= maxWidthMm

/** As many leading characters of a word as fit, at least one. */
function headThatFits(word: string, room: TextRoom): string {
  const characters = [...word]
  let count = 1
  while (count < characters.length && fits(characters.slice(0, count + 1).join(''), room)) count++
  return characters.slice(0, count).join('')
}

/** Pieces of a word that each fit in a line; the word itself when it does. */
function brokenWord(word: string, room: TextRoom): readonly string[] {
  const parts: string[] = []
  let rest = word
  while (rest !== '' && !fits(rest, room)) {
    const head = headThatFits(rest, room)
    parts.push(head)
    rest = rest.slice(head.length)
  }
  return rest === '' ? parts : [...parts, rest]
}

/** Where a line may break: spaces other than the ones that hold a figure and its unit together. */
const BREAKS = /[^\S\u00a0\u202f]+/u

/**
 * Breaks a text into lines.
 * @param room  font size and greatest width of a line, mm
 * @returns the lines, at least one; no-break spaces do not break; a word longer than a line is broken inside
 * Rules: DRW-3.
 */
export function wrapText(text: string, room: TextRoom): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.trim().split(BREAKS)) {
    for (const part of brokenWord(word, room)) {
      const longer = line === '' ? part : `${line} ${part}`
      if (fits(longer, room)) {
        line = longer
      } else {
        lines.push(line)
        line = part
      }
    }
  }
  return [...lines, line]
}

/**
 * A text on one line: cut off with an ellipsis when it is too long (names can be 200 characters).
 * Rules: DRW-3.
 */
export function shortenText(text: string, room: TextRoom): string {
  const plain = printableText(text).trim()
  if (fits(plain, room)) return plain
  const characters = [...plain]
  while (characters.length > 0 && !fits(`${characters.join('').trimEnd()}…`, room)) characters.pop()
  return `${characters.join('').trimEnd()}…`
}
