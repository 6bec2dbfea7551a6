import { simplifyRing } from '../../geometry'
import { type AngleRange, partMiddles } from './angleRange'
import type { SearchWood } from './searchWood'
import { runLengthMm, type StripAt, type StripRun } from './stripBox'

/** A strip of a known width with its longest run. */
export interface StripPlace extends StripAt {
  readonly run: StripRun | null
}

export type RunAt = (at: StripAt, atLeastMm: number) => StripRun | null

const SCAN_STEP_RAD = (3 * Math.PI) / 180
const OFFSETS_PER_ANGLE = 24
const BEST_PLACES = 6
/** Straight edges along which a table is tried, the longest first. */
const MOST_STRAIGHT_EDGES = 16

const lengthOf = ({ run }: StripPlace): number => (run === null ? 0 : runLengthMm(run))

export interface ScanTask {
  readonly wood: SearchWood
  readonly angles: AngleRange
  readonly widthMm: number
  /** How far a strip may reach beyond the wood. */
  readonly overhangMm: number
  readonly runAt: RunAt
}

/**
 * Places worth a climb: the best of a coarse grid, and strips that lie along a straight edge of the wood.
 */
export function scannedStrips(task: ScanTask): readonly StripPlace[] {
  const { wood, angles, widthMm, runAt } = task
  const parts = Math.max(1, Math.ceil((angles.toRad - angles.fromRad) / SCAN_STEP_RAD))
  const places: StripPlace[] = flushStrips(wood, angles, widthMm).map((at) => ({ ...at, run: runAt(at, 1) }))
  for (const angleRad of partMiddles(angles, parts)) {
    const best = bestOffset(task, angleRad)
    if (best !== null) places.push(best)
  }
  return places
    .filter(({ run }) => run !== null)
    .sort((a, b) => lengthOf(b) - lengthOf(a))
    .slice(0, BEST_PLACES)
}

function bestOffset({ wood, widthMm, overhangMm, runAt }: ScanTask, angleRad: number): StripPlace | null {
  const extent = extentAcross(wood, angleRad)
  const lowMm = extent.lowMm - overhangMm
  const roomMm = extent.highMm + overhangMm - lowMm - widthMm
  if (roomMm < 0) return null
  let best: StripPlace | null = null
  for (let k = 0; k < OFFSETS_PER_ANGLE; k += 1) {
    const offsetMm = lowMm + widthMm / 2 + ((k + 0.5) * roomMm) / OFFSETS_PER_ANGLE
    const run = runAt({ angleRad, offsetMm }, best === null ? 1 : lengthOf(best))
    if (run !== null) best = { angleRad, offsetMm, run }
  }
  return best
}

function extentAcross(wood: SearchWood, angleRad: number): { lowMm: number; highMm: number } {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  let [lowMm, highMm] = [Infinity, -Infinity]
  wood.edges.ax.forEach((x, i) => {
    const v = (wood.edges.ay[i] ?? 0) * cos - x * sin
    if (v < lowMm) lowMm = v
    if (v > highMm) highMm = v
  })
  return { lowMm, highMm }
}

/** Strips with a side along one of the longest straight edges of the outline: the only places where a sawn board fits. */
function flushStrips(wood: SearchWood, angles: AngleRange, widthMm: number) {
  const edges = wood.regions.flatMap(({ outer }) => {
    const ring = simplifyRing(outer, 0.5)
    return ring.map((a, i) => {
      const b = ring[(i + 1) % ring.length] ?? a
      return { a, dx: b[0] - a[0], dy: b[1] - a[1], lengthMm: Math.hypot(b[0] - a[0], b[1] - a[1]) }
    })
  })
  const longest = edges.sort((p, q) => q.lengthMm - p.lengthMm).slice(0, MOST_STRAIGHT_EDGES)
  return longest.flatMap(({ a, dx, dy }) => {
    const angleRad = angleWithin(Math.atan2(dy, dx), angles)
    if (angleRad === null) return []
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
    const edgeMm = (a[1] - wood.pivot[1]) * cos - (a[0] - wood.pivot[0]) * sin
    return [-0.5, 0.5].map((side) => ({ angleRad, offsetMm: edgeMm + side * widthMm }))
  })
}

/** The same line's direction within the range; null when it is not allowed. */
function angleWithin(angleRad: number, { fromRad, toRad }: AngleRange): number | null {
  const turned = angleRad - Math.PI * Math.floor((angleRad - fromRad) / Math.PI)
  return turned <= toRad ? turned : null
}

const MOST_CLIMBING_STEPS = 80
/** Of the first step, 0.75° and 8 mm: 1e-7 rad and 1e-4 mm. */
const LEAST_CLIMBING_STEP = 1e-5
/** A climb is not kept up for less than this, mm. */
const LEAST_GAIN_MM = 1e-4

/** Neighbours that a climb tries: along both axes and both diagonals. */
const DIRECTIONS = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
] as const

/**
 * A climb from one strip to the best one near it.
 * Method: compass search in direction and offset; steps are halved where nothing is better and doubled where something is.
 */
export function polishedStrip(from: StripPlace, runAt: RunAt): StripPlace {
  let best: StripPlace = { ...from, run: runAt(from, 1) }
  let step = 1
  for (let tries = 0; tries < MOST_CLIMBING_STEPS && step > LEAST_CLIMBING_STEP; tries += 1) {
    const better = betterNeighbour(best, step, runAt)
    step = better === null ? step / 2 : Math.min(1, step * 2)
    best = better ?? best
  }
  return best
}

function betterNeighbour(from: StripPlace, step: number, runAt: RunAt): StripPlace | null {
  let best: StripPlace | null = null
  let bestMm = lengthOf(from) + LEAST_GAIN_MM
  for (const [turn, shift] of DIRECTIONS) {
    const angleRad = from.angleRad + turn * step * (SCAN_STEP_RAD / 4)
    const offsetMm = from.offsetMm + shift * step * 8
    const run = runAt({ angleRad, offsetMm }, Math.max(1, bestMm))
    if (run === null || runLengthMm(run) <= bestMm) continue
    best = { angleRad, offsetMm, run }
    bestMm = runLengthMm(run)
  }
  return best
}
