import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flattening, type HeightReading, rippedReadings } from './flattening'

const SEED = 20_261_126
console.info(`flattening properties: seed ${SEED}`)

const at = (xMm: number, yMm: number, topMm: number, thicknessMm = 60): HeightReading => ({
  xMm,
  yMm,
  topMm,
  thicknessMm,
})
const flat = (readings: readonly HeightReading[]) => {
  const found = flattening(readings, 2, 40)
  if (found === null) throw new Error('no answer')
  return found
}

describe('flattening', () => {
  it('WOOD-7 leaves a slab that only slopes as thick as it is (by hand)', () => {
    const sloping = [at(0, 0, 60), at(2000, 0, 80), at(2000, 800, 90), at(0, 800, 70)]
    const found = flat(sloping)
    // 10 mm in a metre along, 12.5 in a metre across: square to that slope 60/√(1 + 0.01² + 0.0125²) mm.
    expect(found.flatMm).toBeCloseTo(60 / Math.hypot(1, 0.01, 0.0125), 4)
    expect(found.topPlane.alongPerMm).toBeCloseTo(0.01, 6)
    expect(found.topPlane.acrossPerMm).toBeCloseTo(0.0125, 6)
    expect(found.top.greatestMm).toBeCloseTo(0, 4)
    expect(found.overWantedMm).toBeCloseTo(20, 1)
  })

  it('WOOD-7 takes the whole twist off: 12 mm at one corner of four costs half of it (by hand)', () => {
    // Winding corners ±3 mm about the best plane on both faces: 6 off above and below together.
    const found = flat([at(0, 0, 60), at(2000, 0, 60), at(2000, 800, 72), at(0, 800, 60)])
    expect(found.flatMm).toBeCloseTo(54, 2)
    expect(found.top.greatestMm).toBeCloseTo(6, 2)
    expect(found.top.passes).toBe(3)
  })

  it('WOOD-7 takes a cup of 8 mm off both faces (by hand)', () => {
    const cupped = [0, 1000, 2000].flatMap((x) => [at(x, 0, 68), at(x, 400, 60), at(x, 800, 68)])
    const found = flat(cupped)
    expect(found.flatMm).toBeCloseTo(52, 3)
    expect(found.top.greatestMm).toBeCloseTo(8, 3)
    expect(found.bottom.greatestMm).toBeCloseTo(8, 3)
    expect(found.bottom.leastMm).toBeCloseTo(0, 3)
  })

  it('WOOD-7 leaves more than any other pair of parallel planes', () => {
    const reading = fc.record({
      xMm: fc.integer({ min: 0, max: 2500 }),
      yMm: fc.integer({ min: 0, max: 1000 }),
      topMm: fc.integer({ min: 50, max: 90 }),
      thicknessMm: fc.integer({ min: 40, max: 70 }),
    })
    const slope = fc.double({ min: -0.08, max: 0.08, noNaN: true })
    fc.assert(
      fc.property(fc.array(reading, { minLength: 3, maxLength: 15 }), slope, slope, (readings, a, b) => {
        const over = readings.map((r) => r.topMm - a * r.xMm - b * r.yMm)
        const under = readings.map((r) => r.topMm - r.thicknessMm - a * r.xMm - b * r.yMm)
        const other = Math.min(...over) - Math.max(...under)
        const { flatMm, topPlane } = flat(readings)
        const high = flatMm * Math.hypot(1, topPlane.alongPerMm, topPlane.acrossPerMm)
        expect(high).toBeGreaterThanOrEqual(other - 1e-3)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  it('WOOD-7 says nothing of two places, and refuses a pass that takes nothing', () => {
    expect(flattening([at(0, 0, 60), at(1, 0, 60)], 2, 40)).toBeNull()
    expect(() => flattening([], 0, 40)).toThrow('pass')
  })

  it('WOOD-8 a cupped slab ripped in the middle keeps twice what the cup takes (by hand)', () => {
    // Each half slopes 8 mm in 400 and is straight: nothing is lost but the slope.
    const cupped = [0, 2000].flatMap((x) => [at(x, 0, 68), at(x, 400, 60), at(x, 800, 68)])
    for (const half of rippedReadings(cupped, 400))
      expect(flat(half).flatMm).toBeCloseTo(60 / Math.hypot(1, 0.02), 3)
  })

  it('WOOD-8 makes readings on a rip that runs between two rows, and no half is thinner than the whole', () => {
    const cupped = [0, 2000].flatMap((x) => [at(x, 0, 68, 62), at(x, 400, 60, 58), at(x, 800, 70, 60)])
    const [far, near] = rippedReadings(cupped, 300)
    expect(far).toHaveLength(4)
    expect(far[2]).toEqual({ xMm: 0, yMm: 300, topMm: 62, thicknessMm: 59 })
    expect(near).toHaveLength(6)
    const whole = flat(cupped).flatMm
    expect(flat(far).flatMm).toBeGreaterThanOrEqual(whole - 1e-6)
    expect(flat(near).flatMm).toBeGreaterThanOrEqual(whole - 1e-6)
  })
})
