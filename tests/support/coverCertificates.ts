import { ringCentroid, type Ring, slabPoint, type SlabPoint, type TablePoint } from '../../src/core/geometry'
import {
  areaInBox,
  bestPose,
  largestShape,
  largestTable,
  NO_WISHES,
  type SearchState,
  searchWood,
  type SearchWood,
} from '../../src/core/layout'
import {
  extentAcross,
  isOnWood,
  shrunkInPlace,
  offWoodMm2,
  plainClimb,
  plainRunMm,
  scaledRing,
  slabRegions,
  tableRing,
} from './coverReference'
import { type RandomSlab, randomSlab } from './randomSlab'
import { seededRandom, type SeededRandom } from './seededRandom'

/** What a search proved beside what was found against it by other means. */
export interface CertificateLine {
  readonly search: 'largestTable' | 'resinTable' | 'bestPose' | 'largestShape'
  readonly value: number
  readonly bound: number
  /** The best valid thing that the attack found; above the bound it is a bug. */
  readonly attack: number
  readonly evaluations: number
  /** Why the answer itself is wrong; null when it is what it says. */
  readonly wrong: string | null
}

/** Greatest share by which a line may exceed its bound: rounding only. */
export const ROUNDING = 1e-9

export const isViolated = ({ attack, value, bound }: CertificateLine): boolean =>
  Math.max(attack, value) > bound * (1 + ROUNDING)

/** A slab of a seed as the searches take it. */
export function woodOf(seed: number): { readonly slab: RandomSlab; readonly wood: SearchWood } {
  const slab = randomSlab(seed)
  const wood = searchWood(slabRegions(slab))
  if (!wood.ok) throw new Error('a random slab has wood')
  return { slab, wood: wood.value }
}

/** A slab's length and mean width, roughly. */
export const sizeOf = (wood: SearchWood): { readonly lengthMm: number; readonly widthMm: number } => ({
  lengthMm: 2 * wood.radiusMm,
  widthMm: wood.areaMm2 / (2 * wood.radiusMm),
})

export function attackLargestTable(seed: number, tries: number): CertificateLine {
  const { slab, wood } = woodOf(seed)
  const random = seededRandom(seed * 31 + 7)
  const widthMm = sizeOf(wood).widthMm * random.between(0.3, 1.05)
  const state = largestTable({ wood, widthMm, resinShare: 0, grain: null, toleranceMm: 2 }).step(2_000_000)
  const regions = slabRegions(slab)
  const valueAt = ([angleRad, v]: readonly [number, number]): number =>
    plainRunMm(regions, angleRad, v, widthMm)
  const found = Array.from({ length: tries }, () => {
    const angleRad = random.between(-Math.PI / 2, Math.PI / 2)
    const [low, high] = extentAcross(regions, angleRad)
    const at = [angleRad, random.between(low, high)] as const
    return { at, value: valueAt(at) }
  }).sort((p, q) => q.value - p.value)
  const climbs = found
    .slice(0, 1)
    .map(
      ({ at }) => plainClimb<readonly [number, number]>(at, [0.02, 10], valueAt, () => random.next()).value,
    )
  return {
    search: 'largestTable',
    ...proved(state),
    attack: Math.max(0, ...climbs),
    wrong: wrongTable(slab, state),
  }
}

function wrongTable(slab: RandomSlab, { incumbent }: ReturnType<ReturnType<typeof largestTable>['step']>) {
  if (incumbent === null) return null
  const { lengthMm, widthMm, pose } = incumbent
  const off = offWoodMm2(slabRegions(slab), tableRing(lengthMm, widthMm), pose)
  // Both long sides over the edge by FIT_TOLERANCE_MM, and a little for slivers.
  return off <= 2 * 0.02 * lengthMm + 5 ? null : `off the wood by ${off} mm²`
}

/** With resin: a table a little longer than the bound, moved to where it holds most wood. */
export function attackResinTable(seed: number, evaluations: number): CertificateLine {
  const { slab, wood } = woodOf(seed)
  const random = seededRandom(seed * 43 + 17)
  const widthMm = sizeOf(wood).widthMm * random.between(0.5, 1.05)
  const resinShare = random.between(0.01, 0.1)
  const task = { wood, widthMm, resinShare, grain: null, toleranceMm: 5, mostEvaluations: evaluations }
  const state = largestTable(task).step(Infinity)
  const lengthMm = state.bound * (1 + 1e-6)
  const shareAt = ([xMm, yMm, angleRad]: readonly [number, number, number]): number =>
    areaInBox(wood.edges, { xMm, yMm, angleRad, halfLengthMm: lengthMm / 2, halfWidthMm: widthMm / 2 }) /
    (lengthMm * widthMm)
  const from = [0, 0, state.incumbent?.place.angleRad ?? 0] as const
  const { at, value } = plainClimb<readonly [number, number, number]>(from, [60, 60, 0.1], shareAt, () =>
    random.next(),
  )
  const isAllowed = value >= 1 - resinShare && isCoreWhole(slab, wood, at, lengthMm, widthMm / 2)
  return {
    search: 'resinTable',
    ...proved(state),
    attack: isAllowed ? lengthMm : 0,
    wrong: wrongShare(wood, state, resinShare),
  }
}

/** Does the middle of a table stay within the slab's outline from end to end? */
function isCoreWhole(
  slab: RandomSlab,
  wood: SearchWood,
  [x, y, angleRad]: readonly [number, number, number],
  lengthMm: number,
  coreMm: number,
): boolean {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  const [u, v] = [-lengthMm / 2, -coreMm / 2]
  const pose = {
    xMm: wood.pivot[0] + x + u * cos - v * sin,
    yMm: wood.pivot[1] + y + u * sin + v * cos,
    angleRad,
    turnedOver: false,
  }
  return isOnWood([{ outer: slab.outer, holes: [] }], tableRing(lengthMm, coreMm), pose)
}

function wrongShare(
  wood: SearchWood,
  { incumbent }: ReturnType<ReturnType<typeof largestTable>['step']>,
  resinShare: number,
) {
  const run = incumbent?.place.run
  if (incumbent === null || run === null || run === undefined) return null
  const { place, lengthMm, widthMm } = incumbent
  const [cos, sin] = [Math.cos(place.angleRad), Math.sin(place.angleRad)]
  const middle = (run.fromMm + run.toMm) / 2
  const woodMm2 = areaInBox(wood.edges, {
    xMm: middle * cos - place.offsetMm * sin,
    yMm: middle * sin + place.offsetMm * cos,
    angleRad: place.angleRad,
    halfLengthMm: lengthMm / 2,
    halfWidthMm: widthMm / 2,
  })
  const share = 1 - woodMm2 / (lengthMm * widthMm)
  return share <= resinShare + 1e-9 ? null : `${share} of resin`
}

export function attackBestPose(seed: number, tries: number): CertificateLine {
  const { slab, wood } = woodOf(seed)
  const random = seededRandom(seed * 37 + 11)
  const size = sizeOf(wood)
  const lengthMm = size.lengthMm * random.between(0.5, 0.95)
  const widthMm = size.widthMm * random.between(0.6, 1)
  const task = { wood, lengthMm, widthMm, wishes: NO_WISHES, toleranceShare: 0.005 }
  const state = bestPose(task).step(20_000)
  const valueAt = ([xMm, yMm, angleRad]: readonly [number, number, number]): number =>
    areaInBox(wood.edges, { xMm, yMm, angleRad, halfLengthMm: lengthMm / 2, halfWidthMm: widthMm / 2 })
  const found = Array.from({ length: tries }, () => {
    const [along, across] = [
      random.between(-0.2, 0.2) * size.lengthMm,
      random.between(-0.3, 0.3) * size.widthMm,
    ]
    const at = [along, across, random.between(-0.35, 0.35)] as const
    return { at, value: valueAt(at) }
  }).sort((p, q) => q.value - p.value)
  const climbs = found
    .slice(0, 1)
    .map(
      ({ at }) =>
        plainClimb<readonly [number, number, number]>(at, [20, 20, 0.02], valueAt, () => random.next()).value,
    )
  return {
    search: 'bestPose',
    ...proved(state),
    attack: Math.max(0, ...climbs),
    wrong: wrongPose(slab, lengthMm, widthMm, state),
  }
}

function wrongPose(
  slab: RandomSlab,
  lengthMm: number,
  widthMm: number,
  { incumbent }: ReturnType<ReturnType<typeof bestPose>['step']>,
) {
  if (incumbent === null) return 'found nothing'
  const off = offWoodMm2(slabRegions(slab), tableRing(lengthMm, widthMm), incumbent.pose)
  const told = lengthMm * widthMm - incumbent.woodMm2
  return Math.abs(off - told) < 5 ? null : `${off} mm² lie off the wood, not ${told}`
}

export function attackLargestShape(seed: number, outline: Ring<TablePoint>, tries: number): CertificateLine {
  const { slab, wood } = woodOf(seed)
  const random = seededRandom(seed * 41 + 13)
  const search = largestShape({ wood, outline, growth: 'factor', grain: null, tolerance: 0.001 })
  if (!search.ok) throw new Error(search.problem.code)
  const state = search.value.step(30_000)
  const regions = slabRegions(slab)
  // A shape a little beyond the bound, near the answer and anywhere: none may lie on the wood.
  const factor = state.bound * (1 + 1e-6)
  const larger = scaledRing(outline, factor)
  const fits = Array.from({ length: tries }, (_, k) =>
    isOnWood(regions, larger, tryPose(outline, factor, state, wood, random, k)),
  ).some((isOn) => isOn)
  return {
    search: 'largestShape',
    ...proved(state),
    attack: fits ? factor : 0,
    wrong: wrongShape(slab, outline, state),
  }
}

type ShapeState = SearchState<{
  readonly growth: number
  readonly pose: { xMm: number; yMm: number; angleRad: number }
}>

/** The larger shape about the middle of the answer, moved a little; every third time anywhere. */
function tryPose(
  outline: Ring<TablePoint>,
  factor: number,
  { incumbent, value }: ShapeState,
  wood: SearchWood,
  random: SeededRandom,
  k: number,
) {
  const middle = ringCentroid(outline)
  const anywhere = k % 3 === 0 || incumbent === null
  const angleRad = anywhere
    ? random.between(-Math.PI, Math.PI)
    : incumbent.pose.angleRad + random.between(-3e-3, 3e-3)
  const near = incumbent === null ? slabPoint(0, 0) : middleOf(incumbent.pose, middle, value)
  const size = sizeOf(wood)
  const x = anywhere
    ? wood.pivot[0] + random.between(-0.4, 0.4) * size.lengthMm
    : near[0] + random.between(-2, 2)
  const y = anywhere
    ? wood.pivot[1] + random.between(-0.4, 0.4) * size.widthMm
    : near[1] + random.between(-2, 2)
  return poseAbout(slabPoint(x, y), middle, factor, angleRad)
}

/** The pose of an outline times a factor whose middle lies at a place. */
function poseAbout(at: SlabPoint, middle: TablePoint, factor: number, angleRad: number) {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  return {
    xMm: at[0] - factor * (middle[0] * cos - middle[1] * sin),
    yMm: at[1] - factor * (middle[0] * sin + middle[1] * cos),
    angleRad,
    turnedOver: false,
  }
}

function middleOf(pose: { xMm: number; yMm: number; angleRad: number }, middle: TablePoint, factor: number) {
  const [cos, sin] = [Math.cos(pose.angleRad), Math.sin(pose.angleRad)]
  return slabPoint(
    pose.xMm + factor * (middle[0] * cos - middle[1] * sin),
    pose.yMm + factor * (middle[0] * sin + middle[1] * cos),
  )
}

function wrongShape(slab: RandomSlab, outline: Ring<TablePoint>, { incumbent }: ReturnType<ShapeStep>) {
  if (incumbent === null) return 'found nothing'
  const smaller = shrunkInPlace(outline, incumbent.growth, incumbent.pose, 1e-7)
  return isOnWood(slabRegions(slab), smaller.outline, smaller.pose) ? null : 'not wholly on the wood'
}

type ShapeSearch = Extract<ReturnType<typeof largestShape>, { ok: true }>['value']
type ShapeStep = ShapeSearch['step']

const proved = ({ value, bound, evaluations }: SearchState<unknown>) => ({ value, bound, evaluations })
