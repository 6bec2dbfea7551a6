import {
  areaInBox,
  bestPose,
  boatRing,
  finishedRing,
  frontier,
  frontierWidths,
  keptTable,
  largestShape,
  largestTable,
  NO_WISHES,
  twoSlabs,
} from '../../../src/core/layout'
import { type Ring, type TablePoint, tablePoint } from '../../../src/core/geometry'
import { sizeOf, woodOf } from '../../support/coverCertificates'
import { exhaustivePoses, plainClimb, slabRegions } from '../../support/coverReference'
import { seededRandom } from '../../support/seededRandom'
import { timedSearch } from './stopwatch'

const free = { resinShare: 0, grain: null } as const

/** Best pose beside an exhaustive search of 5 mm and a quarter of a degree, climbed from its best four. */
export function bestPoseCase(seed: number) {
  const { slab, wood } = woodOf(seed)
  const random = seededRandom(seed)
  const size = sizeOf(wood)
  const lengthMm = size.lengthMm * random.between(0.7, 0.95)
  const widthMm = size.widthMm * random.between(0.8, 1.2)
  const half = { halfLengthMm: lengthMm / 2, halfWidthMm: widthMm / 2 }
  const grid = { cellMm: 5, stepRad: Math.PI / 720 }
  const references = exhaustivePoses(slabRegions(slab), { lengthMm, widthMm }, grid)
    .slice(0, 4)
    .map(({ xMm, yMm, angleRad }) =>
      plainClimb<readonly [number, number, number]>(
        [xMm - wood.pivot[0], yMm - wood.pivot[1], angleRad],
        [6, 6, 0.006],
        ([x, y, turn]) => areaInBox(wood.edges, { xMm: x, yMm: y, angleRad: turn, ...half }),
        () => random.next(),
      ),
    )
  const referenceMm2 = Math.max(...references.map(({ value }) => value))
  const task = { wood, lengthMm, widthMm, wishes: NO_WISHES, toleranceShare: 0.002 }
  const { state, answerMs, totalMs } = timedSearch(bestPose(task), 1e-4 * referenceMm2, 400_000)
  return {
    case: 'bestPose',
    seed,
    points: wood.edges.count,
    woodShare: state.value / (lengthMm * widthMm),
    referenceMm2,
    shortOfReferencePercent: 100 * (1 - state.value / referenceMm2),
    answerMs,
    provedMs: state.isDone ? totalMs : null,
    evaluations: state.evaluations,
    gapPercent: (100 * (state.bound - state.value)) / (lengthMm * widthMm),
  }
}

export function largestTableCase(seed: number) {
  const { wood } = woodOf(seed)
  const widthMm = sizeOf(wood).widthMm * seededRandom(seed).between(0.5, 1)
  const search = largestTable({ ...free, wood, widthMm, toleranceMm: 2 })
  const { state, answerMs, totalMs } = timedSearch(search, 2, 2_000_000)
  return {
    case: 'largestTable',
    seed,
    points: wood.edges.count,
    widthMm,
    lengthMm: state.value,
    gapMm: state.bound - state.value,
    answerMs,
    provedMs: totalMs,
    evaluations: state.evaluations,
  }
}

/** A tie over every angle: the search's worst case. */
export function discCase(timed: typeof timedSearch, wood: ReturnType<typeof woodOf>['wood']) {
  const search = largestTable({ ...free, wood, widthMm: 1200, toleranceMm: 2 })
  const { state, answerMs, totalMs } = timed(search, 2, 2_000_000)
  return {
    case: 'largestTable',
    seed: 'disc',
    points: wood.edges.count,
    widthMm: 1200,
    lengthMm: state.value,
    gapMm: state.bound - state.value,
    answerMs,
    provedMs: totalMs,
    evaluations: state.evaluations,
  }
}

export function frontierCase(seed: number, resinShare: number) {
  const { wood } = woodOf(seed)
  const { widthMm } = sizeOf(wood)
  const widthsMm = frontierWidths(0.4 * widthMm, widthMm, 16)
  const task = { wood, widthsMm, resinShare, grain: null, toleranceMm: 5, mostEvaluations: 15_000 }
  const { state, totalMs } = timedSearch(frontier(task), 0)
  const gapsMm = (state.incumbent ?? []).map(({ boundMm, lengthMm }) => boundMm - lengthMm)
  return {
    case: resinShare > 0 ? 'resinFrontier' : 'frontier',
    seed,
    points: wood.edges.count,
    totalMs,
    evaluations: state.evaluations,
    // A width that no strip has is proved to be none; its bound is that of the shortest table.
    worstGapMm: Math.max(...(state.incumbent ?? []).map((p, k) => (p.pose === null ? 0 : (gapsMm[k] ?? 0)))),
    provedWidths: gapsMm.filter((gap) => gap <= 5).length,
  }
}

const BEAN: Ring<TablePoint> = Array.from({ length: 60 }, (_, i) => {
  const turn = (2 * Math.PI * i) / 60
  const radius = 1 + 0.25 * Math.cos(2 * turn)
  return tablePoint(1000 + 800 * radius * Math.cos(turn), 500 + 400 * radius * Math.sin(turn))
})

export const OUTLINES: Readonly<Record<string, Ring<TablePoint>>> = {
  rounded: finishedRing({ kind: 'rounded', lengthMm: 1800, widthMm: 800, cornerRadiusMm: 120 }),
  oval: finishedRing({ kind: 'oval', lengthMm: 1600, widthMm: 900 }),
  round: finishedRing({ kind: 'oval', lengthMm: 900, widthMm: 900 }),
  boat: boatRing(2000, 900, 600),
  bean: BEAN,
}

export function shapeCase(seed: number, name: string) {
  const { wood } = woodOf(seed)
  const outline = OUTLINES[name] ?? BEAN
  const search = largestShape({ wood, outline, growth: 'factor', grain: null, tolerance: 0.001 })
  if (!search.ok) throw new Error(search.problem.code)
  const { state, answerMs, totalMs } = timedSearch(search.value, 0.001, 400_000)
  return {
    case: 'largestShape',
    outline: name,
    seed,
    points: wood.edges.count,
    factor: state.value,
    gap: state.bound - state.value,
    answerMs,
    provedMs: state.isDone ? totalMs : null,
    evaluations: state.evaluations,
  }
}

export function keptCase(seed: number, keep: 'both' | 'one') {
  const { wood } = woodOf(seed)
  const task = { wood, keep, leastWidthMm: 0.85 * sizeOf(wood).widthMm, grain: null, toleranceMm: 5 }
  const { state, totalMs } = timedSearch(keptTable(task), 2)
  const { leastWidthMm = 0, meanWidthMm = 0 } = state.incumbent ?? {}
  return {
    case: 'keptTable',
    keep,
    seed,
    lengthMm: state.value,
    leastWidthMm,
    meanWidthMm,
    gapMm: state.bound - state.value,
    totalMs,
  }
}

export function twoSlabCase(seeds: readonly number[]) {
  const slabs = seeds.map((seed) => ({ id: String(seed), wood: woodOf(seed).wood, grain: null }))
  const task = { slabs, lengthMm: 1200, widthMm: 1100, jointMm: 4, mostBandMm: 300, toleranceMm: 2 }
  const { state, totalMs } = timedSearch(twoSlabs(task), 0)
  const [best] = state.incumbent ?? []
  return {
    case: 'twoSlabs',
    slabs: seeds.length,
    pairs: state.incumbent?.length ?? 0,
    join: best?.join ?? null,
    totalMs,
  }
}
