import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PeakTracker, pourPeak, type PourCase } from './pourPeak'
import { GENERIC_CHEMISTRY } from './resinChemistry'

const SEED = 20_250_702
console.info(`pourPeak properties: seed ${SEED}`)

const chemistry = { ...GENERIC_CHEMISTRY, referenceRatePerS: 5.7e-6, referenceC: 21 }

interface Case {
  readonly depthMm: number
  readonly roomC: number
  readonly warmerK: number
  readonly widthMm: number | null
}

const pourOf = ({ depthMm, roomC, warmerK, widthMm }: Case): PourCase => ({
  layer: { depthMm, widthMm, resinC: roomC + warmerK },
  setting: { room: { kind: 'steady', roomC }, air: 'still', beneath: 'board-on-bench', woodWPerMK: 0.15 },
  startHour: 0,
})
const coreOf = (one: Case): number => pourPeak(chemistry, pourOf(one)).coreC

const anyCase = fc.record({
  depthMm: fc.double({ min: 3, max: 120, noNaN: true }),
  roomC: fc.double({ min: 10, max: 38, noNaN: true }),
  warmerK: fc.double({ min: 0, max: 12, noNaN: true }),
  widthMm: fc.option(fc.double({ min: 10, max: 900, noNaN: true })),
})
/** The peak is read between steps: smaller than any reading. */
const READING_K = 0.25

/** A case in which raising one figure makes the core cooler; null where none was found. */
const coolerCase = (raise: (one: Case) => Case): unknown =>
  fc.check(
    fc.property(anyCase, (one) => coreOf(raise(one)) >= coreOf(one) - READING_K),
    { seed: SEED, numRuns: 60 },
  ).counterexample

describe('pourPeak', () => {
  it('RES-12 a deeper pour is never cooler', () => {
    expect(coolerCase((one) => ({ ...one, depthMm: one.depthMm * 1.1 }))).toBeNull()
  })

  it('RES-12 a warmer room never gives a cooler core', () => {
    expect(coolerCase((one) => ({ ...one, roomC: one.roomC + 2 }))).toBeNull()
  })

  it('RES-12 warmer resin never gives a cooler core', () => {
    expect(coolerCase((one) => ({ ...one, warmerK: one.warmerK + 3 }))).toBeNull()
  })

  it('RES-7 a wider gap is never cooler', () => {
    expect(
      coolerCase((one) => ({ ...one, widthMm: one.widthMm === null ? null : one.widthMm * 1.2 })),
    ).toBeNull()
  })

  it('RES-12 fans never make a pour hotter, and the core is never cooler than the surface', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const still = pourOf(one)
        const peak = pourPeak(chemistry, still)
        const fans = pourPeak(chemistry, { ...still, setting: { ...still.setting, air: 'fans' } })
        expect(fans.coreC).toBeLessThanOrEqual(peak.coreC + READING_K)
        expect(peak.coreC).toBeGreaterThanOrEqual(peak.surfaceC - 1e-9)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  it('RES-6 a pour in the cool of the evening stays cooler than one in the morning of a hot day', () => {
    const swing = (startHour: number): number =>
      pourPeak(chemistry, {
        layer: { depthMm: 50, widthMm: null, resinC: 21 },
        setting: {
          room: { kind: 'swing', meanC: 21, swingC: 4, warmestHour: 15 },
          air: 'still',
          beneath: 'board-on-bench',
          woodWPerMK: 0.15,
        },
        startHour,
      }).coreC
    expect(swing(8)).toBeGreaterThan(swing(20) + 20)
  })

  it('RES-12 a warm resin that first cools is followed to its peak', () => {
    const peak = pourPeak(chemistry, pourOf({ depthMm: 60, roomC: 15, warmerK: 8, widthMm: null }))
    expect(peak.coreC).toBeGreaterThan(40)
    expect(peak.coreHours).toBeGreaterThan(5)
  })
})

describe('PeakTracker', () => {
  it('RES-12 it finds the top of a parabola between its samples', () => {
    const tracker = new PeakTracker()
    for (const hour of [0, 1, 2.5, 3, 4]) tracker.add(hour, 10 - (hour - 2.2) ** 2)
    expect(tracker.hour).toBeCloseTo(2.2, 9)
  })

  it('RES-12 it tells the first sample where nothing rises above it, and the last where all rise', () => {
    const falling = new PeakTracker()
    for (const hour of [5, 6, 7]) falling.add(hour, -hour)
    expect([falling.hour, falling.value]).toEqual([5, -5])
    const rising = new PeakTracker()
    for (const hour of [5, 6, 7]) rising.add(hour, hour)
    expect([rising.hour, rising.value]).toEqual([7, 7])
  })
})
