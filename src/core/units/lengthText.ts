/** What makers, phones and word processors put for the same few signs. */
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/[\s\u00a0\u2007\u2009\u202f]+/g, ' '],
  [/[′’‘´`ʹʼ＇]/g, "'"],
  [/[″”“„‟ʺ˝＂]/g, '"'],
  [/[−–—‐‑]/g, '-'],
  [/ ?[/⁄∕] ?/g, '/'],
  [/''/g, '"'],
]

/** Words for units; a dot after one is the dot of an abbreviation. */
const UNIT_WORDS: readonly (readonly [RegExp, string])[] = [
  [/(?<![a-z])(?:millimet(?:re|er)s?|mm)(?![a-z])\.?/g, 'mm'],
  [/(?<![a-z])(?:centimet(?:re|er)s?|cm)(?![a-z])\.?/g, 'cm'],
  [/(?<![a-z])(?:met(?:re|er)s?|m)(?![a-z])\.?/g, 'm'],
  [/(?<![a-z])(?:inch(?:es)?|in)(?![a-z])\.?/g, '"'],
  [/(?<![a-z])(?:foot|feet|ft)(?![a-z])\.?/g, "'"],
]

const FRACTION_SIGN = /[¼-¾⅐-⅞]/g

/** ⅜ is 3/8 with a space before it, or 35⅜ would become 353/8. */
const spelledOut = (sign: string): string => ` ${sign.normalize('NFKC')}`

/**
 * Text of a number or length with one spelling for every sign: straight quotes, `/`, `-`, single spaces, no digit
 * grouping by spaces (2 200 is 2200; 2 200/201 stays a mixed number), lower case, no space at the ends.
 */
export function plainSigns(text: string): string {
  return SIGNS.reduce(
    (line, [pattern, plain]) => line.replace(pattern, plain),
    text.replace(FRACTION_SIGN, spelledOut),
  )
    .trim()
    .toLowerCase()
    .replace(/(?<![\d.,/])\d{1,3}(?: \d{3})+(?![\d/])/g, (grouped) => grouped.replaceAll(' ', ''))
}

/** As `plainSigns`, and every unit as one of mm, cm, m, ' and ". */
export function plainLength(text: string): string {
  return UNIT_WORDS.reduce((line, [pattern, unit]) => line.replace(pattern, unit), plainSigns(text))
}

/** `1,200` may be twelve hundred or one and a fifth: a comma before exactly three digits, a digit before it. */
export const hasAmbiguousComma = (plain: string): boolean => /\d,\d{3}(?!\d)/.test(plain)

/** Other commas before a digit are decimal signs. */
export const commasAsPoints = (plain: string): string => plain.replace(/,(?=\d)/g, '.')
