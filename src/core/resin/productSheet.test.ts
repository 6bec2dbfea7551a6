import { describe, expect, it } from 'vitest'
import { EXAMPLE_SHEETS } from './exampleSheets'
import { sheetNotices, type ProductSheet } from './productSheet'

const good: ProductSheet = { ...EXAMPLE_SHEETS.slowCasting, isExample: false }
const codes = (change: Partial<ProductSheet>): readonly string[] =>
  sheetNotices({ ...good, ...change }).map(({ code }) => code)

describe('sheetNotices', () => {
  it('RES-9 a good sheet is quiet, an example says that it is one', () => {
    expect(codes({})).toEqual([])
    for (const sheet of Object.values(EXAMPLE_SHEETS)) {
      expect(sheet.name).toMatch(/^Example/)
      expect(sheetNotices(sheet)).toMatchObject([{ code: 'sheet-is-example', severity: 'warning' }])
    }
  })

  it('RES-9 a figure that cannot be is named with its value and blocks the heat', () => {
    for (const [figure, value] of [
      ['deepestLayerMm', 0],
      ['deepestLayerMm', NaN],
      ['referenceC', -40],
      ['testWidthMm', -5],
      ['greatestMassKg', 0],
      ['greatestDyeFraction', 0.9],
      ['recoatLeastHours', -1],
    ] as const) {
      expect(sheetNotices({ ...good, [figure]: value })).toMatchObject([
        { code: 'figure-unusable', severity: 'blocker', values: { figure, value } },
      ])
    }
  })

  it('RES-9 a limit at or below the reference temperature blocks', () => {
    expect(codes({ surfacePeakLimitC: 22 })).toEqual(['sheet-limit-below-reference'])
  })

  it('RES-9 a working time without minutes or mass blocks, none at all does not', () => {
    expect(codes({ workingTime: { minutes: 0, massKg: 1, temperatureC: 21 } })).toEqual(['figure-unusable'])
    expect(codes({ workingTime: { minutes: 60, massKg: 0, temperatureC: 21 } })).toEqual(['figure-unusable'])
    expect(codes({ workingTime: null })).toEqual([])
  })
})
