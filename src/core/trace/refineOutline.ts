import { cheapestRound } from './closedPath'
import { edgeBand, smoothedAround, type EdgeBand } from './edgeBand'
import type { Picture } from './picture'
import { strokePlaces, type Stroke } from './stroke'
import { unitPx } from './unitPx'

type Place = readonly [x: number, y: number]

/** Lengths are in steps across the band (`unitPx`). */
interface RefineSettings {
  /** Spacing of the places along the edge, in steps. */
  readonly along: number
  readonly reach: number
  /** How far the staircase of the rough outline is smoothed. */
  readonly spread: number
  /** How far the rough outline is usually off. */
  readonly trust: number
  /** What a step sideways from one place to the next costs, squared. */
  readonly stepCost: number
  /** Usual width of the dark line between sawn face and edge, how much that varies, and how willingly it varies more. */
  readonly arris: number
  readonly arrisSpread: number
  readonly arrisTail: number
  /** Weight of the second change of colour against its usual place. */
  readonly arrisWeight: number
  /** Changes of colour below this are noise: at the face, and beyond the dark line. */
  readonly noise: number
  readonly faintNoise: number
  /** The second change is looked for between these, beyond the first. */
  readonly gap: number
  readonly far: number
  /** How many places to either side a stroke on the dark line teaches: so many times its own, at most `learn`. */
  readonly learnRuns: number
  readonly learn: number
}

/** Found on rendered photos with known outlines; none of them is sensitive (README). */
export const REFINE: RefineSettings = {
  along: 2,
  reach: 22,
  spread: 5,
  trust: 7,
  stepCost: 0.15,
  arris: 3.2,
  arrisSpread: 2.5,
  arrisTail: 1,
  arrisWeight: 2,
  noise: 12,
  faintNoise: 2,
  gap: 2,
  far: 16,
  learnRuns: 3,
  learn: 150,
}

/** Stronger changes than this times the usual count no more: a bright chip must not draw the edge. */
const MOST_CHANGE = 1.2
const FORBIDDEN = 1e4

/** Change of colour across the band at each place: the difference of the means of two pixels on either side. */
function changeAcross(band: EdgeBand): Float32Array {
  const depth = 2 * band.reach + 1
  const { colours, count } = band
  const change = new Float32Array(count * depth)
  for (let n = 0; n < count; n++) {
    for (let t = 2; t < depth - 2; t++) {
      const at = (n * depth + t) * 3
      let squares = 0
      for (let c = 0; c < 3; c++) {
        const inner = (colours[at - 3 + c] ?? 0) * 2 + (colours[at - 6 + c] ?? 0)
        const outer = (colours[at + 3 + c] ?? 0) * 2 + (colours[at + 6 + c] ?? 0)
        squares += ((outer - inner) / 3) ** 2
      }
      change[n * depth + t] = Math.sqrt(squares)
    }
  }
  return change
}

/**
 * Strengths divided by what is usual near by, so that faint stretches count as much as strong ones.
 * @param from,to where the strongest of each place is looked for, as indices across
 */
function evened(
  change: Float32Array,
  count: number,
  depth: number,
  floor: number,
  from: (n: number) => number = () => 0,
  to: (n: number) => number = () => depth,
): Float32Array {
  const strongest = new Float64Array(count)
  for (let n = 0; n < count; n++) {
    for (let t = Math.max(0, from(n)); t < Math.min(depth, to(n)); t++) {
      strongest[n] = Math.max(strongest[n] ?? 0, change[n * depth + t] ?? 0)
    }
  }
  const usual = smoothedAround(strongest, 1, 20)
  return change.map((value, at) => value / ((usual[Math.floor(at / depth)] ?? 0) + floor))
}

/** What the strokes rule out at each place: the edge lies at or beyond `least`, and at or within `most`. */
interface Limits {
  readonly least: Float64Array
  readonly most: Float64Array
}

const NO_LIMIT = -Infinity

/** Half a step is left between a stroke and the edge. */
const STROKE_GAP = 0.5

/** A stroke's place limits the places of the band that it lies across from. */
const ACROSS_STEPS = 1.5

/** Calls `visit` for each place of the band that a point lies across from, with how far outwards, in steps. */
function acrossFrom(
  band: EdgeBand,
  x: number,
  y: number,
  visit: (n: number, outwards: number) => void,
): void {
  const { count, reach, centres, normals, unitPx: stepPx } = band
  for (let n = 0; n < count; n++) {
    const dx = x - (centres[n * 2] ?? 0)
    const dy = y - (centres[n * 2 + 1] ?? 0)
    if (Math.abs(dx) + Math.abs(dy) > 2 * reach * stepPx) continue
    const nx = normals[n * 2] ?? 0
    const ny = normals[n * 2 + 1] ?? 0
    const outwards = (dx * nx + dy * ny) / stepPx
    if (Math.abs(dy * nx - dx * ny) <= ACROSS_STEPS * stepPx && Math.abs(outwards) <= reach)
      visit(n, outwards)
  }
}

function limitsFrom(band: EdgeBand, strokes: readonly Stroke[]): Limits {
  const least = new Float64Array(band.count).fill(NO_LIMIT)
  const most = new Float64Array(band.count).fill(-NO_LIMIT)
  for (const stroke of strokes) {
    for (const [x, y] of strokePlaces(stroke, 1)) {
      acrossFrom(band, x, y, (n, outwards) => {
        const at = outwards + band.reach
        if (stroke.kind === 'wood') least[n] = Math.max(least[n] ?? 0, at + STROKE_GAP)
        else most[n] = Math.min(most[n] ?? 0, at - STROKE_GAP)
      })
    }
  }
  return { least, most }
}

function forbid(costs: Float32Array, depth: number, { least, most }: Limits): void {
  for (let at = 0; at < costs.length; at++) {
    const n = Math.floor(at / depth)
    const t = at % depth
    if (t < (least[n] ?? 0) || t > (most[n] ?? 0)) costs[at] = FORBIDDEN
  }
}

/** How many places in a row round about one have something above zero; 0 where it has nothing itself. */
function runAround(values: Float64Array, at: number): number {
  const count = values.length
  const isOn = (n: number): boolean => (values[(n + count) % count] ?? 0) > 0
  if (!isOn(at)) return 0
  let length = 1
  for (const step of [1, -1]) {
    for (let n = at + step; length < count && isOn(n); n += step) length++
  }
  return length
}

/**
 * The usual width of the dark line, wider round about strokes that lie on it: the longer a stroke runs along the line,
 * the farther it teaches; a short one may lie on a single lobe of bark.
 */
function arrisWidths(inner: Int32Array, { least }: Limits, settings: RefineSettings): Float64Array {
  const count = inner.length
  const { arris, learn, learnRuns } = settings
  const widths = new Float64Array(count).fill(arris)
  const more = least.map((limit, n) => Math.max(0, limit + STROKE_GAP - (inner[n] ?? 0) - arris))
  for (let n = 0; n < count; n++) {
    const wider = more[n] ?? 0
    if (wider === 0) continue
    const spread = Math.min(learn, learnRuns * runAround(more, n))
    const reach = Math.ceil(spread * 3)
    for (let k = -reach; k <= reach; k++) {
      const m = (n + k + count * 4) % count
      widths[m] = Math.max(widths[m] ?? 0, arris + wider * Math.exp(-(k * k) / (2 * spread ** 2)))
    }
  }
  return widths
}

/** To the strongest change of colour near the rough outline: where the clear face ends. */
function* innerEdge(
  raw: Float32Array,
  depth: number,
  limits: Limits,
  settings: RefineSettings,
): Generator<void, Int32Array> {
  const count = raw.length / depth
  const change = evened(raw, count, depth, settings.noise)
  yield
  const costs = change.map((value, at) => {
    const t = (at % depth) - settings.reach
    return -Math.min(value, MOST_CHANGE) + (t / settings.trust) ** 2 / 2
  })
  // A stroke on wood may lie on the dark line: then the clear face ends before it.
  forbid(costs, depth, { most: limits.most, least: limits.least.map(() => NO_LIMIT) })
  yield
  return cheapestRound(costs, count, depth, { mostStep: 2, stepCost: settings.stepCost })
}

/** From there outwards over the dark line of the rounded arris, to where it ends. */
function* outerEdge(
  raw: Float32Array,
  inner: Int32Array,
  depth: number,
  limits: Limits,
  settings: RefineSettings,
): Generator<void, Int32Array> {
  const count = inner.length
  const from = (n: number): number => (inner[n] ?? 0) + settings.gap
  const to = (n: number): number => (inner[n] ?? 0) + settings.far
  const change = evened(raw, count, depth, settings.faintNoise, from, to)
  const widths = arrisWidths(inner, limits, settings)
  yield
  const { arrisSpread, arrisTail, arrisWeight, stepCost } = settings
  const costs = change.map((value, at) => {
    const n = Math.floor(at / depth)
    const beyond = (at % depth) - (inner[n] ?? 0)
    if (beyond < 0) return FORBIDDEN
    const unusual = (beyond - (widths[n] ?? 0)) / arrisSpread
    // A bell with long tails: bark lying in the face is many times wider than usual.
    return (
      arrisTail * Math.log(1 + unusual ** 2 / (2 * arrisTail)) - arrisWeight * Math.min(value, MOST_CHANGE)
    )
  })
  forbid(costs, depth, limits)
  yield
  return cheapestRound(costs, count, depth, { mostStep: 2, stepCost })
}

/**
 * Moves a rough outline to the edge on the sharp photo: first to the strongest change of colour near by, then outwards
 * over the dark line that the rounded arris and the bark show, to where that line ends. Yields between slices of work.
 * @param rough   positive ring, photo pixels
 * @param strokes hard limits: wood stays inside, the rest outside; a stroke on a dark line also widens it near by
 */
export function* refinedOutline(
  picture: Picture,
  rough: readonly Place[],
  strokes: readonly Stroke[],
  settings: RefineSettings = REFINE,
): Generator<void, readonly Place[]> {
  const stepPx = unitPx(picture)
  const { along, reach, spread } = settings
  const band = yield* edgeBand(picture, rough, { unitPx: stepPx, along, reach, spread })
  const depth = 2 * reach + 1
  const raw = changeAcross(band)
  yield
  const limits = limitsFrom(band, strokes)
  yield
  const inner = yield* innerEdge(raw, depth, limits, settings)
  yield
  const outer = yield* outerEdge(raw, inner, depth, limits, settings)
  yield
  const offsets = smoothedAround(
    Float64Array.from(outer, (k) => (k - reach) * stepPx),
    1,
    1,
  )
  return Array.from({ length: band.count }, (_, n): Place => {
    const t = offsets[n] ?? 0
    return [
      (band.centres[n * 2] ?? 0) + (band.normals[n * 2] ?? 0) * t,
      (band.centres[n * 2 + 1] ?? 0) + (band.normals[n * 2 + 1] ?? 0) * t,
    ]
  })
}
