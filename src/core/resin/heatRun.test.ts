import { describe, expect, it } from 'vitest'
import { autocatalyticLaw } from './cureLaw'
import { inertCells, type HeatCell } from './heatCell'
import { HeatRun, USUAL_STEPS } from './heatRun'
import { GENERIC_CHEMISTRY } from './resinChemistry'

const law = autocatalyticLaw({ ...GENERIC_CHEMISTRY, referenceRatePerS: 1e-4, referenceC: 21 })
const cells: readonly HeatCell[] = inertCells({
  thicknessM: 0.03,
  conductivityWPerMK: 0.2,
  volumetricHeatJPerM3K: 2.09e6,
  temperatureK: 294.15,
  cells: 12,
}).map((cell) => ({ ...cell, fullRiseK: 179, layer: 0 }))
const ends = { bottomWPerM2K: 0, topWPerM2K: 9, airK: () => 294.15 }

describe('HeatRun', () => {
  it('RES-4 no step cures more than a little over its limit', () => {
    const run = new HeatRun(cells, ends, law, 0)
    let before = Array.from(run.degree)
    while (run.timeS < 40_000) {
      run.advance(40_000, USUAL_STEPS)
      const most = Math.max(...before.map((value, index) => (run.degree[index] ?? NaN) - value))
      expect(most).toBeLessThan(0.03)
      before = Array.from(run.degree)
    }
    expect(Math.max(...before)).toBeGreaterThan(0.9)
  })

  it('RES-5 it ends exactly at the hour that was asked for', () => {
    const run = new HeatRun(cells, ends, law, 100)
    while (run.timeS < 5000) run.advance(5000, USUAL_STEPS)
    expect(run.timeS).toBe(5000)
  })

  it('RES-4 temperature is tied to cure: without losses the rise is its share of the full rise', () => {
    const run = new HeatRun(cells, { ...ends, topWPerM2K: 0 }, law, 0)
    while (run.timeS < 3000) run.advance(3000, USUAL_STEPS)
    expect((run.temperatureK[5] ?? NaN) - 294.15 - 179 * (run.degree[5] ?? NaN)).toBeCloseTo(0, 9)
  })

  it('RES-5 the balance closes, and a run that loses heat has lost some', () => {
    const run = new HeatRun(cells, ends, law, 0)
    while (run.timeS < 50_000) run.advance(50_000, USUAL_STEPS)
    const { storedJPerM2, releasedJPerM2, lostJPerM2 } = run.balance
    expect(Math.abs(storedJPerM2 - releasedJPerM2 + lostJPerM2) / releasedJPerM2).toBeLessThan(1e-12)
    expect(lostJPerM2).toBeGreaterThan(0.1 * releasedJPerM2)
  })

  it('RES-8 its cells carry temperature and cure to the next run', () => {
    const run = new HeatRun(cells, ends, law, 0)
    run.advance(600, USUAL_STEPS)
    expect(run.cells[3]).toMatchObject({ temperatureK: run.temperatureK[3], degree: run.degree[3], layer: 0 })
  })
})
