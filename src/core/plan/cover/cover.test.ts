import { describe, expect, it } from 'vitest'
import { flatOption, flatPlan, flatSlab } from '../../../../tests/support/flatPlan'
import { coverSearch, type CoverTask, type LargestShape, type SearchState } from '../../layout'
import { regionsAreaMm2, slabPoint } from '../../geometry'
import { blankStationSlab } from '../blankPlan'
import { computePlan } from '../computePlan'
import type { Option, Slab } from '../schema'
import { bestSlab, cheaperSlabs, compareSlabs, isWet } from './compareSlabs'
import { bestPlaceTask, type CoverSubject, largestTask, marginTask, woodToSearch } from './coverTasks'
import { driedRegions, dryingOf, drynessIssues, poseBeforeDrying } from './drying'
import { finishedThickness } from './finishedThickness'
import { type SlabFindings, slabRow } from './slabRow'
import { yardAnswer } from './yardAnswer'

const NOTHING: SlabFindings = { margin: null, bestPose: null, largest: null, kept: null, isDone: true }

function solved<T>(task: CoverTask): T {
  const search = coverSearch(task)
  if (!search.ok) throw new Error(search.problem.code)
  // The task's kind tells what it finds.
  return (search.value.step(Infinity) as SearchState<unknown>).incumbent as T
}

/** The flat slab is 2200 × 900. */
function subjectOf(option: Option, slab: Slab = flatSlab()): CoverSubject {
  const found = computePlan(flatPlan(slab, option)).slabs.get(slab.id)
  if (found?.shape.state !== 'ready') throw new Error('no shape')
  return { option, slab, shape: found.shape.value }
}

function rowOf(option: Option, slab: Slab = flatSlab()) {
  const plan = flatPlan(slab, option)
  const result = computePlan(plan)
  const slabResult = result.slabs.get(slab.id)
  if (slabResult === undefined) throw new Error('no result')
  const isReady = slabResult.shape.state === 'ready'
  const findings = isReady
    ? {
        ...NOTHING,
        margin: solved<LargestShape>(marginTask(subjectOf(option, slab))),
        bestPose: solved<SlabFindings['bestPose']>(bestPlaceTask(subjectOf(option, slab))),
        largest: solved<SlabFindings['largest']>(largestTask(subjectOf(option, slab), 0)),
      }
    : NOTHING
  return slabRow({ plan, option, slab, slabResult, issues: result.issues, findings })
}

const AT = { xMm: 0, yMm: 0 }

describe('thickness and drying', () => {
  it('CHO-1 takes flattening and cleaning off the rough thickness: 50 − 12 − 2 = 36 mm, by hand', () => {
    const { cover } = flatOption(1000, 500, AT)
    expect(finishedThickness(flatSlab({ thicknessMm: 50 }), cover)?.thicknessMm).toBe(36)
    expect(finishedThickness(flatSlab({ thicknessMm: null }), cover)).toBeNull()
  })

  it('CHO-2 shrinks flat-sawn walnut from 20 to 8 % by about 33 mm a metre, as design notes by the handbook say', () => {
    const slab: Slab = {
      ...flatSlab(),
      species: 'black walnut',
      moistureFraction: 0.2,
      stock: { ...flatSlab().stock, pourMoistureFraction: 0.08 },
    }
    expect(dryingOf(slab).lossFraction * 1000).toBeCloseTo(33, -0.5)
  })

  it('CHO-2 widens the doubt of a slab whose moisture is not known, and says so', () => {
    const known = dryingOf({ ...flatSlab(), moistureFraction: 0.1 })
    const unknown = dryingOf({ ...flatSlab(), moistureFraction: null })
    expect(unknown.sdFraction).toBeGreaterThan(known.sdFraction)
  })

  it('CHO-2 has an issue for a slab above the limit, unless it is to be dried before the pour', () => {
    const wet = (moistureFraction: number | null, pourMoistureFraction: number | null = null) =>
      drynessIssues(
        { ...flatSlab(), moistureFraction, stock: { ...flatSlab().stock, pourMoistureFraction } },
        0.12,
      ).map(({ code, severity, values }) => [code, severity, values['share']])
    expect(wet(0.121)).toEqual([['slab-not-dry', 'warning', 0.121]])
    expect([wet(0.12), wet(null), wet(0.2, 0.09)]).toEqual([[], [], []])
  })

  it('CHO-2 leaves the middle of a table on the same spot of the wood', () => {
    const loss = 0.04
    const pose = { xMm: 100, yMm: 50, angleRad: 0.3, turnedOver: false }
    const middle = (at: typeof pose) => at.yMm + 500 * Math.sin(0.3) + 250 * Math.cos(0.3)
    const before = poseBeforeDrying(pose, loss, [500, 250])
    expect(middle(before) * (1 - loss)).toBeCloseTo(middle(pose), 9)
    const [dried] = driedRegions([{ outer: [slabPoint(1, 100)], holes: [] }], loss)
    expect(dried?.outer[0]).toEqual([1, 96])
  })
})

describe('the answer of one slab', () => {
  it('CHO-3 covers with half of what is to spare on each side: (2200 − 2100) / 2 = 50 mm, by hand', () => {
    const row = rowOf({
      ...flatOption(2100, 800, AT),
      table: { ...flatOption(2100, 800, AT).table, thicknessMm: 30 },
    })
    expect(row.verdict).toMatchObject({ kind: 'covers', voids: 0 })
    expect(row.verdict.kind === 'covers' && row.verdict.marginMm).toBeCloseTo(50, 0)
    expect(row.largest?.lengthMm).toBeCloseTo(2200, -0.5)
    expect(row.pose).not.toBeNull()
  })

  it('CHO-3 needs fill where a little is short, and does not serve where more resin would do than is allowed', () => {
    const wide = (widthMm: number): Option => {
      const option = flatOption(2000, widthMm, AT)
      return { ...option, table: { ...option.table, thicknessMm: 30 } }
    }
    expect(rowOf(wide(960)).verdict).toMatchObject({ kind: 'needs-fill' })
    expect(rowOf(wide(1300)).verdict).toMatchObject({ kind: 'too-small' })
  })

  it('CHO-3 counts voids as wood only where they are welcome', () => {
    const option = flatOption(1000, 500, AT)
    const subject = subjectOf(option)
    const unwelcome = { ...option, cover: { ...option.cover, voids: 'unwelcome' as const } }
    expect(woodToSearch(subject)[0]?.outer).toEqual(subject.shape.outline)
    expect(woodToSearch({ ...subject, option: unwelcome })).toEqual(subject.shape.wood)
  })

  it('CHO-3 never counts bark as wood, however welcome voids are: 900 × 2200 less 100 × 100 mm, by hand', () => {
    const subject = subjectOf(flatOption(1000, 500, AT))
    const ring = [
      [1000, 0],
      [1100, 0],
      [1100, 100],
      [1000, 100],
    ].map(([x = 0, y = 0]) => slabPoint(x, y))
    const inclusion = { name: 'B1', traceId: 'bark', ring, depthMm: null, areaMm2: 10_000 }
    const area = (kind: 'bark' | 'void'): number =>
      regionsAreaMm2(
        woodToSearch({ ...subject, shape: { ...subject.shape, voids: [{ ...inclusion, kind }] } }),
      )
    expect(area('void')).toBeCloseTo(subject.shape.grossAreaMm2, 0)
    expect(area('bark')).toBeCloseTo(subject.shape.grossAreaMm2 - 10_000, 0)
  })

  it('CHO-5 turns down a slab that is too thin once flat, whatever its size', () => {
    const row = rowOf(flatOption(1000, 500, AT), flatSlab({ thicknessMm: 50 }))
    expect(row.verdict.kind).toBe('too-thin')
  })

  it('CHO-4 answers by tape: yes inside the narrowest, no beyond the widest, measure it between', () => {
    const tape = { lengthMm: 2400, narrowestMm: 900, widestMm: 1000 }
    expect(yardAnswer(tape, { lengthMm: 2000, widthMm: 880 })).toEqual({ kind: 'yes', spareMm: 10 })
    expect(yardAnswer(tape, { lengthMm: 2000, widthMm: 950 })).toEqual({
      kind: 'measure',
      between: [900, 1000],
    })
    expect(yardAnswer(tape, { lengthMm: 2000, widthMm: 1010 })).toEqual({ kind: 'no', shortMm: 10 })
    expect(yardAnswer(tape, { lengthMm: 2450, widthMm: 800 })).toEqual({ kind: 'no', shortMm: 50 })
    expect(yardAnswer({ ...tape, narrowestMm: null }, { lengthMm: 2000, widthMm: 950 })).toBeNull()
  })
})

describe('slabs side by side', () => {
  const option: Option = {
    ...flatOption(2000, 800, AT),
    table: { ...flatOption(2000, 800, AT).table, thicknessMm: 30 },
  }
  const taped = (
    id: string,
    priceCents: number,
    narrowestMm: number | null,
    rejected: string | null = null,
  ) => {
    const blank = blankStationSlab(id, id, 60)
    const tape = { lengthMm: 2400, narrowestMm, widestMm: null }
    return rowOf(option, {
      ...blank,
      priceCents,
      moistureFraction: 0.1,
      stock: { ...blank.stock, tape, rejected },
    })
  }

  it('CHO-6 puts what serves and costs least first, the rejected last, and names it', () => {
    const rows = [
      taped('dear', 900, 850),
      taped('out', 100, 850, 'cracked'),
      taped('cheap', 500, 850),
      taped('small', 50, 700),
    ]
    expect(compareSlabs(rows, 'answer').map(({ slab }) => slab.id)).toEqual(['cheap', 'dear', 'small', 'out'])
    expect(bestSlab(rows)?.slab.id).toBe('cheap')
  })

  it('CHO-6 names what costs less than the best one and may serve, and sorts by the hours of the pour', () => {
    const rows = [taped('best', 500, 850), taped('narrow', 100, 700), taped('wet', 300, 850)]
    const [best, , wet] = rows.map((row, n) => ({ ...row, pourHours: [90, 10, null][n] ?? null }))
    if (best === undefined || wet === undefined) throw new Error('three rows')
    const damp = { ...wet, issues: drynessIssues({ ...wet.slab, moistureFraction: 0.2 }, 0.12) }
    expect([isWet(best), isWet(damp)]).toEqual([false, true])
    expect(bestSlab([damp, best])?.slab.id).toBe('best')
    expect(cheaperSlabs([damp, best], best).map(({ slab }) => slab.id)).toEqual(['wet'])
    expect(compareSlabs([damp, best], 'days').map(({ slab }) => slab.id)).toEqual(['best', 'wet'])
  })

  it('CHO-7 lets thirty slabs answer though three of them lack something, and those say what', () => {
    const rows = Array.from({ length: 30 }, (_, n) => taped(`s${n}`, n * 100, n < 3 ? null : 810 + n))
    const needing = rows.filter(({ verdict }) => verdict.kind === 'needs-input')
    expect(needing.map(({ slab }) => slab.id)).toEqual(['s0', 's1', 's2'])
    for (const { verdict } of needing)
      expect(verdict.kind === 'needs-input' && verdict.issues.length).toBeGreaterThan(0)
    expect(bestSlab(rows)?.slab.id).toBe('s3')
  })
})
