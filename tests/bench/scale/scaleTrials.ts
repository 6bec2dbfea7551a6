import { pxPoint } from '../../../src/core/geometry'
import {
  measuredAreaMm2,
  measuredLengthMm,
  type ScaleInput,
  type SlabScale,
  slabScaleFromMarks,
  THUMB_SD_PX,
} from '../../../src/core/photo'
import type { BenchReference, RefinedReference } from './benchReference'
import { type Noise, noise } from './benchNoise'
import { bentHeightMm, type BentSlab, slabBox, type SlabBox, UNFORESEEN_SHARE } from './bentSlab'
import { type BenchPhoto, truthPx } from './photoTruth'

/** Standard deviations of what a maker does, from the issue that this bench answers. */
const TAPE_SD_MM = 0.5
const BOARD_SD_MM = 0.3
const POINT_SD_PX = 0.3
/** A straightedge with a feeler gauge, or winding sticks, read to this. */
const READING_SD_MM = 0.3
/** The chalk line: nine points over 95 % of the length, at 60 % of the half-width from the slab's middle. */
const LINE = { points: 9, lengthShare: 0.95, offsetShare: 0.6 }
const LEAST_LENGTH_MM = 500
const LENGTHS = 30
const MOST_DRAWS = 100_000
/** Every so many vertices of the truth's outline are enough for the area. */
const AREA_STEP = 24

export interface Condition {
  readonly name: string
  readonly line: boolean
  /** Bow and twist; 'drawn': normal with the deviation that the program assumes when it is told nothing. */
  readonly bent: Pick<BentSlab, 'bowMm' | 'twistMm'> | 'drawn'
  /** Whether straightedge and winding sticks are read and typed in, or the program's default stands. */
  readonly flatnessRead: boolean
}

export interface Estimate {
  readonly truth: number
  readonly estimate: number
  readonly sd: number
}

export interface TrialResult {
  readonly lengths: readonly Estimate[]
  readonly area: Estimate
  readonly problems: readonly string[]
}

type Px = readonly [number, number]

/** What is the same for every trial of a photo. */
export interface Bench {
  readonly photo: BenchPhoto
  readonly box: SlabBox
  readonly references: readonly BenchReference[]
  /** Pairs of outline vertices, by index. */
  readonly lengths: readonly (readonly [number, number])[]
}

export function prepareBench(photo: BenchPhoto, references: readonly BenchReference[], seed: number): Bench {
  const { slab } = photo.truth
  const { random } = noise(seed)
  const seen = slab.top_outline_mm.flatMap((_, i) =>
    slab.top_outline_in_frame[i] && !slab.top_outline_occluded[i] ? [i] : [],
  )
  const lengths: (readonly [number, number])[] = []
  for (let tried = 0; lengths.length < LENGTHS; tried++) {
    if (tried > MOST_DRAWS) throw new Error(`${photo.name}: no lengths of ${LEAST_LENGTH_MM} mm to be seen`)
    const [i, j] = [
      seen[random.integer(0, seen.length - 1)] ?? 0,
      seen[random.integer(0, seen.length - 1)] ?? 0,
    ]
    if (distance(slab.top_outline_mm[i], slab.top_outline_mm[j]) >= LEAST_LENGTH_MM) lengths.push([i, j])
  }
  return { photo, box: slabBox(photo.truth), references, lengths }
}

const distance = (p: Px = [0, 0], q: Px = [0, 0]): number => Math.hypot(p[0] - q[0], p[1] - q[1])

/** Thumb clicks on every mark of every reference, refined by the program on the photo's own pixels. */
export function refinedClicks(bench: Bench, seed: number): readonly RefinedReference[] {
  const { normal } = noise(seed)
  return bench.references.map((reference) =>
    reference.refine(
      bench.photo.image,
      reference.truePx.map(([x, y]): Px => [x + normal(THUMB_SD_PX), y + normal(THUMB_SD_PX)]),
    ),
  )
}

/** One job done by a maker: clicks, tape, line, reading; then lengths and area as the program states them. */
export function runTrial(
  bench: Bench,
  clicks: readonly RefinedReference[],
  condition: Condition,
  seed: number,
): TrialResult | null {
  const draw = noise(seed)
  const bent = bentFor(condition, draw)
  const input = inputFor(bench, clicks, condition, bent, draw)
  const { scale, problems } = slabScaleFromMarks(input)
  if (scale === null) return null
  return {
    lengths: bench.lengths.map((pair) => lengthEstimate(bench, scale, pair, bent, draw)),
    area: areaEstimate(bench, scale, bent),
    problems: problems.map((p) => p.code),
  }
}

function bentFor({ bent }: Condition, { random, normal }: Noise): BentSlab {
  const sign = random.next() < 0.5 ? -1 : 1
  const { bowMm, twistMm } =
    bent === 'drawn'
      ? { bowMm: normal(8), twistMm: normal(8) }
      : { bowMm: sign * bent.bowMm, twistMm: sign * bent.twistMm }
  const sdMm = UNFORESEEN_SHARE * Math.hypot(bowMm, twistMm)
  return { bowMm, twistMm, leanMm: normal(sdMm), shoulderMm: normal(sdMm) }
}

function inputFor(
  bench: Bench,
  clicks: readonly RefinedReference[],
  condition: Condition,
  bent: BentSlab,
  draw: Noise,
): ScaleInput {
  const { photo, box } = bench
  const { normal } = draw
  const named = bench.references.map((reference, r) => ({
    reference,
    refined: clicks[r] ?? { clicks: [], sides: [] },
    idOf: (i: number): string => `r${r}m${i}`,
  }))
  return {
    marks: named.flatMap(({ reference, idOf }) =>
      reference.placesMm.map((_, i) => ({ id: idOf(i), heightMm: reference.heightMm })),
    ),
    observations: named.flatMap(({ reference, refined, idOf }) =>
      refined.clicks.map((click, i) => {
        const [x, y, z] = reference.placesMm[i] ?? [0, 0, 0]
        const [dx, dy] = shiftByBend(bench, bent, x, y, z)
        return { markId: idOf(i), atPx: pxPoint(click.px[0] + dx, click.px[1] + dy), sdPx: click.sdPx }
      }),
    ),
    tapedDistances: named.flatMap(({ reference, idOf }) =>
      reference.lengths.map(({ a, b, lengthMm }) => ({
        id: `${idOf(a)} ${idOf(b)}`,
        markIds: [idOf(a), idOf(b)] as const,
        lengthMm: bentLengthMm(bench, bent, reference, a, b, lengthMm) + normal(TAPE_SD_MM),
      })),
    ),
    boards: named.flatMap(({ reference: { board }, idOf }) =>
      board
        ? [
            {
              id: idOf(0),
              cornerIds: [idOf(0), idOf(1), idOf(2), idOf(3)] as const,
              lengthMm: board.lengthMm + normal(BOARD_SD_MM),
              widthMm: board.widthMm + normal(BOARD_SD_MM),
            },
          ]
        : [],
    ),
    straightLines: [
      ...named.flatMap(({ reference, refined }) =>
        refined.sides.map((side) => bentSide(bench, bent, reference, side)),
      ),
      ...(condition.line ? [chalkLine(bench, bent, draw)] : []),
    ],
    imageWidthPx: photo.image.widthPx,
    imageHeightPx: photo.image.heightPx,
    focalLength35mm: photo.focalLength35mm,
    tapeSdMm: TAPE_SD_MM,
    slabSpanPx: photo.truth.slab.top_outline_mm
      .filter((_, i) => i % 40 === 0)
      .map(([x, y]) => pxOf(truthPx(photo.truth, x, y, bentHeightMm(box, bent, x, y)))),
    slabAxisPx: [datumPx(bench, bent, -1), datumPx(bench, bent, 1)],
    flatness: condition.flatnessRead
      ? {
          kind: 'read',
          bowMm: bent.bowMm + normal(READING_SD_MM),
          // The truth's y runs up, the program's down.
          twistMm: -bent.twistMm + normal(READING_SD_MM),
          readingSdMm: READING_SD_MM,
        }
      : { kind: 'unknown' },
  }
}

/** Where the datum meets the slab's start (−1) or end (1), in the photo. */
function datumPx({ photo, box }: Bench, bent: BentSlab, end: -1 | 1): ReturnType<typeof pxPoint> {
  const [x, y] = [box.middle[0] + end * 0.9 * box.halfLengthMm, box.middle[1]]
  return pxOf(truthPx(photo.truth, x, y, bentHeightMm(box, bent, x, y)))
}

const pxOf = ([x, y]: Px): ReturnType<typeof pxPoint> => pxPoint(x, y)

/** How far bending moves the picture of a point that lies at height z over the flat slab. */
function shiftByBend({ photo, box }: Bench, bent: BentSlab, x: number, y: number, z: number): Px {
  const [u0, v0] = truthPx(photo.truth, x, y, z)
  const [u1, v1] = truthPx(photo.truth, x, y, z + bentHeightMm(box, bent, x, y))
  return [u1 - u0, v1 - v0]
}

/** A tape pulled taut between two marks of the bent slab. */
function bentLengthMm(
  { box }: Bench,
  bent: BentSlab,
  { placesMm }: BenchReference,
  a: number,
  b: number,
  flatMm: number,
): number {
  const [p, q] = [placesMm[a] ?? [0, 0, 0], placesMm[b] ?? [0, 0, 0]]
  const rise = bentHeightMm(box, bent, p[0], p[1]) - bentHeightMm(box, bent, q[0], q[1])
  return Math.hypot(flatMm, rise)
}

function bentSide(
  bench: Bench,
  bent: BentSlab,
  { placesMm }: BenchReference,
  side: RefinedReference['sides'][number],
): RefinedReference['sides'][number] {
  if (bent.bowMm === 0 && bent.twistMm === 0) return side
  return {
    ...side,
    pointsPx: side.pointsPx.map((px) => {
      const [x, y, z] = placeOnSides(bench, placesMm, px)
      const [dx, dy] = shiftByBend(bench, bent, x, y, z)
      return pxPoint(px[0] + dx, px[1] + dy)
    }),
  }
}

const SIDE_STEPS = 200
/** The place on a board's sides whose picture is nearest to a pixel, to 1/200 of a side. */
function placeOnSides(
  { photo }: Bench,
  corners: BenchReference['placesMm'],
  px: Px,
): readonly [number, number, number] {
  let best: readonly [number, number, number] = [0, 0, 0]
  let least = Number.POSITIVE_INFINITY
  corners.forEach((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from
    for (let n = 0; n <= SIDE_STEPS; n++) {
      const t = n / SIDE_STEPS
      const at = [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1]), from[2]] as const
      const away = distance(truthPx(photo.truth, ...at), px)
      if (away < least) [least, best] = [away, at]
    }
  })
  return best
}

function chalkLine(
  { photo, box }: Bench,
  bent: BentSlab,
  { normal }: Noise,
): NonNullable<ScaleInput['straightLines']>[number] {
  const pointsPx = Array.from({ length: LINE.points }, (_, i) => {
    const x = box.middle[0] + (i / (LINE.points - 1) - 0.5) * LINE.lengthShare * 2 * box.halfLengthMm
    const y = box.middle[1] + LINE.offsetShare * box.halfWidthMm
    const [u, v] = truthPx(photo.truth, x, y, bentHeightMm(box, bent, x, y))
    return pxPoint(u + normal(POINT_SD_PX), v + normal(POINT_SD_PX))
  })
  return { id: 'chalk line', pointsPx, sdPx: POINT_SD_PX }
}

function lengthEstimate(
  { photo, box }: Bench,
  scale: SlabScale,
  [i, j]: readonly [number, number],
  bent: BentSlab,
  { normal }: Noise,
): Estimate {
  const seenAt = (n: number): ReturnType<typeof pxPoint> => {
    const [x, y] = photo.truth.slab.top_outline_mm[n] ?? [0, 0]
    const [u, v] = truthPx(photo.truth, x, y, bentHeightMm(box, bent, x, y))
    return pxPoint(u + normal(POINT_SD_PX), v + normal(POINT_SD_PX))
  }
  const { top_outline_mm: outline } = photo.truth.slab
  const { value, sd } = measuredLengthMm(scale, seenAt(i), seenAt(j), POINT_SD_PX)
  return { truth: distance(outline[i], outline[j]), estimate: value, sd }
}

/** Area inside the truth's own outline, so that tracing is left out. */
function areaEstimate({ photo, box }: Bench, scale: SlabScale, bent: BentSlab): Estimate {
  const outline = photo.truth.slab.top_outline_mm.filter((_, i) => i % AREA_STEP === 0)
  const ring = outline.map(([x, y]) => pxOf(truthPx(photo.truth, x, y, bentHeightMm(box, bent, x, y))))
  const { value, sd } = measuredAreaMm2(scale, ring, 0, 1)
  const doubled = outline.reduce((sum, p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p
    return sum + p[0] * q[1] - p[1] * q[0]
  }, 0)
  return { truth: Math.abs(doubled) / 2, estimate: value, sd }
}
