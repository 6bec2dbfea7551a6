import { describe, expect, it } from 'vitest'
import { EXAMPLE_SHEETS } from './exampleSheets'
import { readingActions } from './readingActions'
import { fitSheet } from './sheetFit'
import type { Air } from './pourSetting'

const fit = fitSheet(EXAMPLE_SHEETS.slowCasting, 1100)
const table = (roomC: number, air: Air, widthMm: number | null = null) =>
  readingActions(
    fit.nominal,
    {
      setting: { room: { kind: 'steady', roomC }, air, beneath: 'board-on-bench', woodWPerMK: 0.15 },
      startHour: 0,
      resinC: roomC,
      widthMm,
    },
    50,
    null,
  )

describe('readingActions', () => {
  it('RES-21 one number does not fit all: with fans the surface reads far less when the core is at its limit', () => {
    const still = table(21, 'still')?.limitSurfaceC ?? NaN
    const fans = table(21, 'fans')?.limitSurfaceC ?? NaN
    expect(Math.abs(still - 49)).toBeLessThan(1)
    expect(fans).toBeLessThan(still - 9)
  })

  it('RES-21 three readings, each with its action; the later, the hotter the core and the less time is left', () => {
    const actions = table(24, 'still')?.actions ?? []
    expect(actions.map(({ action }) => action)).toEqual(['watch', 'cool-early', 'stay-clear'])
    const cores = actions.map(({ coreC }) => coreC)
    const leads = actions.map(({ leadHours }) => leadHours)
    expect(cores).toEqual([...cores].sort((a, b) => a - b))
    expect(leads).toEqual([...leads].sort((a, b) => b - a))
    expect(leads[1]).toBeGreaterThan(1)
    for (const { surfaceC, coreC } of actions) expect(coreC).toBeGreaterThan(surfaceC)
  })

  it('RES-21 at the reading to stay clear at, the core of a pour that runs away has passed its limit', () => {
    const found = table(21, 'still')
    expect(found?.actions[2]?.coreC).toBeGreaterThan(found?.coreLimitC ?? NaN)
  })

  it('RES-21 in a gap where no layer is too deep there is nothing to act on', () => {
    expect(table(21, 'still', 15)).toBeNull()
  })
})
