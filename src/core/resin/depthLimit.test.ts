import { describe, expect, it } from 'vitest'
import { depthLimit } from './depthLimit'
import { EXAMPLE_SHEETS } from './exampleSheets'
import { fitSheet } from './sheetFit'

const fit = fitSheet(EXAMPLE_SHEETS.slowCasting, 1100)
const limit = (roomC: number, air: 'still' | 'fans', beyondSheet: boolean, widthMm: number | null = null) =>
  depthLimit(
    fit,
    {
      setting: { room: { kind: 'steady', roomC }, air, beneath: 'board-on-bench', woodWPerMK: 0.15 },
      startHour: 0,
      resinC: roomC,
      widthMm,
    },
    50,
    beyondSheet,
  )

describe('depthLimit', () => {
  it('RES-17 in the heat the model decides, with a tenth of margin, by the worse end of the band', () => {
    const found = limit(30, 'still', false)
    expect(found.cappedBy).toBe('model')
    expect(found.planMm).toBeCloseTo(0.9 * found.bandMm[0], 9)
    expect(found.planMm).toBeLessThan(0.9 * found.modelMm)
  })

  it('RES-17 cold and fans never go beyond the sheet', () => {
    for (const found of [limit(15, 'still', false), limit(21, 'fans', false)]) {
      expect(found.modelMm).toBeGreaterThan(50)
      expect(found).toMatchObject({ cappedBy: 'sheet', planMm: 45 })
    }
  })

  it('RES-17 with the override they go as far as the model allows, with the same margin', () => {
    const found = limit(15, 'still', true)
    expect(found.cappedBy).toBe('model')
    expect(found.planMm).toBeGreaterThan(50)
    expect(found.planMm).toBeCloseTo(0.9 * found.bandMm[0], 9)
  })

  it('RES-17 in a gap so narrow that no depth is too much the sheet decides, and with the override twice the sheet', () => {
    expect(limit(21, 'still', false, 20)).toMatchObject({ modelMm: Infinity, planMm: 45, cappedBy: 'sheet' })
    expect(limit(21, 'still', true, 20)).toMatchObject({ planMm: 90, cappedBy: 'sheet' })
  })
})
