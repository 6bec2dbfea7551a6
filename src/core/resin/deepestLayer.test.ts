import { describe, expect, it } from 'vitest'
import {
  deepestByRoom,
  deepestLayer,
  deepestLayerMm,
  peakAt,
  scaledDepthMm,
  type PourConditions,
} from './deepestLayer'
import { EXAMPLE_SHEETS } from './exampleSheets'
import { fitSheet } from './sheetFit'

const fit = fitSheet(EXAMPLE_SHEETS.slowCasting, 1100)
const at = (
  roomC: number,
  widthMm: number | null = null,
  air: 'still' | 'fans' = 'still',
): PourConditions => ({
  setting: { room: { kind: 'steady', roomC }, air, beneath: 'board-on-bench', woodWPerMK: 0.15 },
  startHour: 0,
  resinC: roomC,
  widthMm,
})

describe('deepestLayer', () => {
  it('RES-12 the layer found has its core at the limit', () => {
    for (const roomC of [16, 24, 33]) {
      const depthMm = deepestLayerMm(fit.nominal, at(roomC), 40) ?? NaN
      expect(Math.abs(peakAt(fit.nominal, at(roomC), depthMm).coreC - fit.nominal.coreLimitC)).toBeLessThan(
        0.5,
      )
    }
  })

  it('RES-12 a warmer room, a wider gap and warmer resin allow less; fans allow more', () => {
    const depth = (conditions: PourConditions): number => deepestLayer(fit, conditions, 50).depthMm
    expect(depth(at(30))).toBeLessThan(depth(at(25)))
    expect(depth(at(25, 400))).toBeLessThan(depth(at(25, 150)))
    expect(depth({ ...at(25), resinC: 32 })).toBeLessThan(depth(at(25)))
    expect(depth(at(25, null, 'fans'))).toBeGreaterThan(depth(at(25)))
  })

  it('RES-12 the band holds the usual depth, is nothing at the reference, and grows away from it', () => {
    const band = (roomC: number): number => {
      const found = deepestLayer(fit, at(roomC), 50)
      const [least, most] = found.bandMm
      expect(least).toBeLessThanOrEqual(found.depthMm)
      expect(most).toBeGreaterThanOrEqual(found.depthMm)
      return (most - least) / found.depthMm
    }
    expect(band(21)).toBeLessThan(0.02)
    expect(band(30)).toBeGreaterThan(band(25))
  })

  it('RES-12 the scaling law is within 5 % of the simulation in still air', () => {
    for (const roomC of [15, 20, 25, 30, 35, 40]) {
      const found = deepestLayer(fit, at(roomC), 50).depthMm
      expect(Math.abs(scaledDepthMm(fit.nominal, 50, roomC) / found - 1)).toBeLessThan(0.05)
    }
  })

  it('RES-12 in a narrow gap no layer is too deep; in a room as hot as the limit every layer is', () => {
    expect(deepestLayer(fit, at(21, 20), 50)).toMatchObject({ depthMm: Infinity, peak: null })
    expect(deepestLayer(fit, at(75), 50)).toMatchObject({ depthMm: 0, bandMm: [0, 0], peak: null })
    expect(deepestLayer(fit, { ...at(21), resinC: 70 }, 50).bandMm[0]).toBe(0)
  })

  it('RES-12 the table has a line for each room, less depth from line to line', () => {
    const table = deepestByRoom(fit, 50, [18, 24, 30], { beneath: 'board-on-bench', woodWPerMK: 0.15 })
    expect(table.map(({ roomC }) => roomC)).toEqual([18, 24, 30])
    const depths = table.map(({ still }) => still.depthMm)
    expect(depths).toEqual([...depths].sort((a, b) => b - a))
  })
})
