import { describe, expect, it } from 'vitest'
import type { LengthDisplay } from '../../units'
import { type PaperName, type Sheet, sheetProblems } from '../../drawing'
import { computePlan } from '../computePlan'
import { ANSWERS_ON_THE_SPOT } from '../pour/slowAnswers'
import { sheetText } from '../text/en/sheet'
import { buildCutSheets } from './buildCutSheets'
import { INCH, MM, sheetPlan, wordsOf } from '../../../../tests/support/sheetPlan'
import type { Option } from '../schema'

/** A third of the void's litres, so that each pour takes several batches. */
const SMALL_BUCKET_KG = 0.3

function cardsOf(
  resin: Partial<Option['resin']>,
  more: { readonly paper?: PaperName; readonly display?: LengthDisplay } = {},
): readonly Sheet[] {
  const { option } = sheetPlan()
  // As if the maker had typed a real sheet with the example's figures: an example's amounts are not printed.
  const sheet = { ...option.resin.sheet, isExample: false }
  const job = sheetPlan({ option: { resin: { ...option.resin, sheet, ...resin } } })
  return buildCutSheets({
    ...job,
    result: computePlan(job.plan, ANSWERS_ON_THE_SPOT),
    display: MM,
    paper: 'a4',
    dateText: '14 March 2026',
    text: sheetText,
    ...more,
  }).filter(({ title }) => title.startsWith(sheetText.sheetTitleMix))
}

const words = (sheets: readonly Sheet[]): string => sheets.map(wordsOf).join('\n')

describe('the mix card', () => {
  it('SHT-9 has one block for each batch of each pour, with its parts by weight and by volume (by hand)', () => {
    // 0.9266125 L in two pours of two batches each; 2 : 1 by volume, 1130 and 980 kg/m³, so 1080 kg/m³ mixed.
    const cards = words(cardsOf({ bucketKg: SMALL_BUCKET_KG }))
    const blocks = cards.match(/Pour \d, batch \d of 2/g)
    expect(blocks).toEqual([
      'Pour 1, batch 1 of 2',
      'Pour 1, batch 2 of 2',
      'Pour 2, batch 1 of 2',
      'Pour 2, batch 2 of 2',
    ])
    // A batch: 0.9266125 / 4 = 0.2317 L, 0.2502 kg; resin ⅔ of the litres × 1130 = 0.1745 kg, hardener 0.0757 kg.
    const lines = cards.split('\n')
    for (const figure of ['0.232 L', '250 g', '175 g', '76 g', '0.154 L', '0.077 L'])
      expect(lines.filter((line) => line === figure).length).toBe(4)
  })

  it('SHT-9 gives each batch the same dye, in grams or in whole drops', () => {
    const grams = words(cardsOf({ bucketKg: SMALL_BUCKET_KG, dye: { kind: 'grams', gramsPerLitre: 10 } }))
    expect(grams.match(/^2\.3 g$/gm)).toHaveLength(4)
    const drops = words(
      cardsOf({ bucketKg: SMALL_BUCKET_KG, dye: { kind: 'drops', dropsPerLitre: 50, gramsPerDrop: 0.04 } }),
    )
    expect(drops.match(/^12 drops$/gm)).toHaveLength(4)
  })

  it('SHT-9 tells hours, readings, bars and cautions, and that an example is no product', () => {
    const cards = words(cardsOf({ start: { day: '2026-05-04', hour: 9 } })).replaceAll('\n', ' ')
    expect(cards).toContain('Pour 1 of 2: Mon 4 May, 09:00')
    expect(cards).toContain('Readings to act on')
    expect(cards).toContain('stay clear and ventilate')
    expect(cards).toMatch(/the slab: \d+ bars/)
    const { sheet } = sheetPlan().option.resin
    expect(words(cardsOf({ sheet }))).toContain('invented example: do not mix by this card')
    expect(cards).toContain('lasting skin allergy')
    const own = cardsOf({ sheet: { ...sheetPlan().option.resin.sheet, isExample: false } })
    expect(words(own)).not.toContain('invented example')
  })

  it('SHT-9 says what all pours take together', () => {
    // 0.9266125 L by hand, as above.
    expect(words(cardsOf({}))).toContain('To mix in all: 0.927 L')
  })

  it('SHT-9 is not there until the pour is worked out', () => {
    const job = sheetPlan()
    const sheets = buildCutSheets({
      ...job,
      result: computePlan(job.plan),
      display: MM,
      paper: 'a4',
      dateText: '14 March 2026',
      text: sheetText,
    })
    expect(sheets.filter(({ title }) => title.startsWith(sheetText.sheetTitleMix))).toEqual([])
  })

  it.each(['a4', 'letter', 'a3', 'tabloid'] as const)(
    'SHT-8 SHT-9 has no text clipped or crossed on %s',
    (paper) => {
      for (const display of [MM, INCH]) {
        const cards = cardsOf(
          {
            bucketKg: 0.05,
            dye: { kind: 'drops', dropsPerLitre: 50, gramsPerDrop: 0.04 },
            sheet: { ...sheetPlan().option.resin.sheet, name: 'Ölberger Gießharz '.repeat(11).slice(0, 200) },
          },
          { paper, display },
        )
        expect(cards.length).toBeGreaterThan(1)
        expect(cards.flatMap((sheet) => sheetProblems(sheet))).toEqual([])
      }
    },
  )
})
