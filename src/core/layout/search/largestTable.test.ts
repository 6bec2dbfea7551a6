import { describe, expect, it } from 'vitest'
import { sizeOf, woodOf } from '../../../../tests/support/coverCertificates'
import { extentAcross, plainRunMm, slabRegions } from '../../../../tests/support/coverReference'
import { randomSlab } from '../../../../tests/support/randomSlab'
import { seededRandom } from '../../../../tests/support/seededRandom'
import { type Region, slabPoint, type SlabPoint } from '../../geometry'
import { InvariantError } from '../../units'
import { areaInBox } from './areaKernel'
import { RunFinder } from './clearRun'
import { doesItFit } from './doesItFit'
import { edgesOf } from './edgeSet'
import { frontier, frontierWidths, spanningWidths } from './frontier'
import { largestTable } from './largestTable'
import { searchWood, type SearchWood } from './searchWood'

const rectangle = (lengthMm: number, widthMm: number): Region<SlabPoint> => ({
  outer: [slabPoint(0, 0), slabPoint(lengthMm, 0), slabPoint(lengthMm, widthMm), slabPoint(0, widthMm)],
  holes: [],
})

function woodFrom(...regions: readonly Region<SlabPoint>[]): SearchWood {
  const wood = searchWood(regions)
  if (!wood.ok) throw new Error(wood.problem.code)
  return wood.value
}

const whole = { resinShare: 0, grain: null, toleranceMm: 2 }

describe('RunFinder', () => {
  it('LAY-13 finds the same longest clear run as a plain count, holes included', () => {
    for (let seed = 300; seed < 340; seed += 1) {
      const regions = slabRegions(randomSlab(seed))
      const edges = edgesOf(regions, [0, 0])
      const finder = new RunFinder(edges)
      const random = seededRandom(seed)
      for (let k = 0; k < 8; k += 1) {
        const angleRad = random.between(-1.6, 1.6)
        const offsetMm = random.between(...extentAcross(regions, angleRad))
        const halfWidthMm = random.between(5, 250)
        const run = finder.longest(edges, { angleRad, offsetMm, halfWidthMm, taper: 0 }, 1)
        const plain = plainRunMm(regions, angleRad, offsetMm, 2 * halfWidthMm)
        expect(run === null ? 0 : run.toMm - run.fromMm).toBeCloseTo(plain > 1 ? plain : 0, 6)
      }
    }
  })
})

describe('largestTable', () => {
  it('LAY-14 ends with a proof to the tolerance, the same however it is stepped', () => {
    const { wood } = woodOf(9)
    const task = { ...whole, wood, widthMm: sizeOf(wood).widthMm * 0.8 }
    const state = largestTable(task).step(Infinity)
    expect(state.isDone).toBe(true)
    expect(state.bound - state.value).toBeLessThanOrEqual(2)
    expect(state.evaluations).toBeLessThan(20_000)
    const search = largestTable(task)
    let stepped = search.step(1)
    while (!stepped.isDone) stepped = search.step(7)
    expect(stepped).toEqual(state)
    expect(search.step(100)).toEqual(state)
  })

  it('LAY-14 only tightens on the way: values rise, bounds fall', () => {
    const { wood } = woodOf(8)
    const { trace } = largestTable({ ...whole, wood, widthMm: sizeOf(wood).widthMm }).step(Infinity)
    expect(trace.length).toBeGreaterThan(3)
    trace.slice(1).forEach((point, i) => {
      const before = trace[i] ?? point
      expect(point.value).toBeGreaterThanOrEqual(before.value)
      expect(point.bound).toBeLessThanOrEqual(before.bound)
      expect(point.bound).toBeGreaterThanOrEqual(point.value)
    })
  })

  it('LAY-14 says of a width that no strip of the wood has: nothing, proved', () => {
    const state = largestTable({ ...whole, wood: woodFrom(rectangle(900, 300)), widthMm: 1000 }).step(
      Infinity,
    )
    expect(state.incumbent).toBeNull()
    expect(state.isDone).toBe(true)
    expect(state.bound).toBeLessThanOrEqual(100)
  })

  it('LAY-14 stays within the grain limit', () => {
    const wood = woodFrom(rectangle(2000, 1000))
    const grain = { directionRad: Math.PI / 2, withinRad: 0.1 }
    const state = largestTable({ ...whole, wood, widthMm: 400, grain }).step(Infinity)
    // Across the board, a little turned: (1000 − 400·sin φ)/cos φ, at most at φ = 0.
    expect(state.value).toBeCloseTo(1000, 0)
  })

  it('refuses a width of nothing', () => {
    expect(() => largestTable({ ...whole, wood: woodFrom(rectangle(9, 200)), widthMm: 0 }).step(1)).toThrow(
      InvariantError,
    )
  })
})

describe('doesItFit', () => {
  it('LAY-14 proves both answers, to a tenth of a millimetre', () => {
    const wood = woodFrom(rectangle(2000, 800))
    expect(doesItFit({ wood, lengthMm: 2000, widthMm: 800, resinShare: 0, grain: null }).kind).toBe('fits')
    expect(doesItFit({ wood, lengthMm: 2000.1, widthMm: 800, resinShare: 0, grain: null }).kind).toBe(
      'does-not-fit',
    )
    expect(doesItFit({ wood, lengthMm: 2000, widthMm: 800.1, resinShare: 0, grain: null }).kind).toBe(
      'does-not-fit',
    )
  })

  it('LAY-14 is not misled by how much is covered', () => {
    // A slit of 1 mm across the middle covers 99.9 % and carries no table.
    const slit = [slabPoint(999, 10), slabPoint(999, 790), slabPoint(1000, 790), slabPoint(1000, 10)]
    const wood = woodFrom({ ...rectangle(2000, 800), holes: [slit] })
    expect(doesItFit({ wood, lengthMm: 1900, widthMm: 700, resinShare: 0, grain: null }).kind).toBe(
      'does-not-fit',
    )
  })

  it('says so when it was not let go on', () => {
    const { wood } = woodOf(2)
    const task = { wood, lengthMm: 1400, widthMm: 430, resinShare: 0, grain: null }
    expect(doesItFit(task, 1).kind).toBe('not-settled')
  })
})

describe('largestTable with resin', () => {
  it('LAY-15 lets resin take the share along the edges', () => {
    // 900 wide on a board of 800: 100/900 of resin all along.
    const wood = woodFrom(rectangle(2000, 800))
    const task = { wood, widthMm: 900, grain: null, toleranceMm: 5 }
    const enough = largestTable({ ...task, resinShare: 0.112 }).step(60_000)
    expect(enough.value).toBeGreaterThan(1995)
    expect(enough.bound).toBeLessThan(2005)
    const tooLittle = largestTable({ ...task, resinShare: 0.05 }).step(4_000)
    expect(tooLittle.value).toBeLessThan(1100)
  })

  it('LAY-15 keeps to the share, by the exact area, and never falls short of whole wood', () => {
    for (const seed of [1, 8]) {
      const { wood } = woodOf(seed)
      const widthMm = sizeOf(wood).widthMm * 0.9
      const resin = largestTable({ wood, widthMm, resinShare: 0.05, grain: null, toleranceMm: 5 }).step(3_000)
      const clear = largestTable({ ...whole, wood, widthMm }).step(Infinity)
      expect(resin.value).toBeGreaterThanOrEqual(clear.value - 2)
      const { place, lengthMm } = resin.incumbent ?? { place: null, lengthMm: 0 }
      if (place?.run === undefined || place.run === null) throw new Error('no run')
      const middle = (place.run.fromMm + place.run.toMm) / 2
      const [cos, sin] = [Math.cos(place.angleRad), Math.sin(place.angleRad)]
      const woodMm2 = areaInBox(wood.edges, {
        xMm: middle * cos - place.offsetMm * sin,
        yMm: middle * sin + place.offsetMm * cos,
        angleRad: place.angleRad,
        halfLengthMm: lengthMm / 2,
        halfWidthMm: widthMm / 2,
      })
      expect(1 - woodMm2 / (lengthMm * widthMm)).toBeLessThanOrEqual(0.05 + 1e-9)
    }
  })

  it('LAY-15 ends no table in resin alone', () => {
    // A share that would pay for a long bar of resin at the end of a sawn board.
    const wood = woodFrom(rectangle(1000, 400))
    const state = largestTable({ wood, widthMm: 400, resinShare: 0.2, grain: null, toleranceMm: 5 }).step(
      100_000,
    )
    expect(state.value).toBeLessThanOrEqual(1005)
    expect(state.value).toBeGreaterThan(995)
  })
})

describe('frontier', () => {
  it('LAY-16 gives for each width what its own search gives, and never rises', () => {
    const { wood } = woodOf(6)
    const widthsMm = frontierWidths(sizeOf(wood).widthMm * 0.5, sizeOf(wood).widthMm, 6)
    const state = frontier({ wood, widthsMm, resinShare: 0, grain: null, toleranceMm: 5 }).step(Infinity)
    const points = state.incumbent ?? []
    expect(points.map(({ widthMm }) => widthMm)).toEqual(widthsMm)
    points.forEach(({ widthMm, lengthMm, boundMm, isDone }, k) => {
      const own = largestTable({ ...whole, wood, widthMm }).step(Infinity)
      expect(isDone).toBe(true)
      expect(boundMm - lengthMm).toBeLessThanOrEqual(5)
      expect(own.value).toBeLessThanOrEqual(boundMm + 1e-6)
      expect(lengthMm).toBeLessThanOrEqual(own.bound + 1e-6)
      expect(lengthMm).toBeLessThanOrEqual((points[k - 1]?.lengthMm ?? Infinity) + 1e-9)
    })
  })

  it('LAY-16 shows points as they come, the widest first', () => {
    const { wood } = woodOf(6)
    const widthsMm = frontierWidths(200, 400, 5)
    const search = frontier({ wood, widthsMm, resinShare: 0, grain: null, toleranceMm: 5 })
    const first = search.step(1)
    expect(first.incumbent?.map(({ widthMm }) => widthMm)).toEqual([400])
    const last = search.step(Infinity)
    expect(last.bound - last.value).toBeLessThanOrEqual(5 * 5)
  })

  it('LAY-16 spans up to the side of the largest square', () => {
    const widths = spanningWidths(woodFrom(rectangle(2500, 700)), null) ?? []
    expect(widths).toHaveLength(16)
    expect(Math.abs((widths.at(-1) ?? 0) - 700)).toBeLessThan(3)
  })
})
