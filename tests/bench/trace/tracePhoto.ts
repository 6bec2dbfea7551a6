import { readFileSync } from 'node:fs'
import { pxPoint, type PxPoint, ringAreaMm2 } from '../../../src/core/geometry'
import { SlabTracer, type Stroke, voidProposals } from '../../../src/core/trace'
import { decodeJpeg } from '../../support/jpegs'
import { iouOf, type OutlineScore, scoreOutline, truthMmFromPx } from './score'
import { nextTouch } from './touches'
import { type PhotoTruth, readTruthFile } from './truthFile'

const MOST_TOUCHES = 12
const LEAST_VOID_MM2 = 400
const MATCH_IOU = 0.5

const TARGETS = {
  medianMm: 3,
  p95Mm: 8,
  areaErrorFraction: 0.008,
  iou: 0.985,
  voidsFoundFraction: 0.8,
  falseVoidsPerSlab: 1,
} as const

interface VoidScore {
  readonly real: number
  readonly found: number
  readonly wrong: number
}

interface PhotoLine extends OutlineScore {
  readonly photo: string
  readonly touches: readonly Stroke[]
  readonly outlinePx: readonly PxPoint[]
  readonly voidsPx: readonly (readonly PxPoint[])[]
  readonly voids: VoidScore
  /** From the first touch after which all targets of the outline were met and stayed so; null: never. */
  readonly metFromTouch: number | null
  /** Longest answer to a touch, and longest piece of work in one go. */
  readonly longestAnswerMs: number
  readonly longestSliceMs: number
}

interface Finished<T> {
  readonly value: T
  readonly tookMs: number
  readonly longestSliceMs: number
}

/** Does the slices of a piece of work one after the other. */
function finished<T>(work: Generator<number, T>): Finished<T> {
  const start = performance.now()
  let longestSliceMs = 0
  for (;;) {
    const sliceStart = performance.now()
    const turn = work.next()
    longestSliceMs = Math.max(longestSliceMs, performance.now() - sliceStart)
    if (turn.done === true) return { value: turn.value, tookMs: performance.now() - start, longestSliceMs }
  }
}

const meets = (score: OutlineScore): boolean =>
  score.medianMm <= TARGETS.medianMm &&
  score.p95Mm <= TARGETS.p95Mm &&
  Math.abs(score.areaErrorFraction) <= TARGETS.areaErrorFraction &&
  score.iou >= TARGETS.iou

/** Each real void is matched by at most one proposal, best first. */
function scoreVoids(truth: PhotoTruth, voidsPx: readonly (readonly PxPoint[])[]): VoidScore {
  const real = truth.slab.voids.filter(({ top_area_mm2 }) => top_area_mm2 >= LEAST_VOID_MM2)
  const proposed = voidsPx.map((ring) => ring.map((place) => truthMmFromPx(truth, place)))
  const pairs = real.flatMap((hole, r) =>
    proposed.map((ring, p) => ({ r, p, iou: iouOf(ring, hole.top_polygon_mm) })),
  )
  const foundReal = new Set<number>()
  const used = new Set<number>()
  for (const { r, p, iou } of pairs.toSorted((a, b) => b.iou - a.iou)) {
    if (iou < MATCH_IOU || foundReal.has(r) || used.has(p)) continue
    foundReal.add(r)
    used.add(p)
  }
  return { real: real.length, found: foundReal.size, wrong: proposed.length - used.size }
}

const rounded = (ring: readonly PxPoint[]): readonly PxPoint[] =>
  ring.map(([x, y]) => pxPoint(Math.round(x * 100) / 100, Math.round(y * 100) / 100))

/** The same line so many mm to the right and down, by the slab's mean scale. */
function shifted(ring: readonly PxPoint[], truth: PhotoTruth, byMm: number): readonly PxPoint[] {
  const real = truth.slab.top_outline_px.map(([x, y]) => pxPoint(x, y))
  const byPx = byMm * Math.sqrt(Math.abs(ringAreaMm2(real)) / truth.slab.top_area_gross_mm2)
  return ring.map(([x, y]) => pxPoint(x + byPx, y + byPx))
}

/**
 * Traces one photo by simulated touches (`touches.ts`) and scores the last outline and the voids within it.
 * @param spoilMm shifts the outline by so much before it is scored, and leaves the voids out: the bench must then fail
 */
export function tracePhoto(file: string, photo: string, spoilMm = 0): PhotoLine {
  const picture = decodeJpeg(new Uint8Array(readFileSync(file)))
  const truth = readTruthFile(file.replace(/\.jpe?g$/i, '.json'))
  const tracer = new SlabTracer(picture)
  const touches: Stroke[] = []
  let outlinePx: readonly PxPoint[] = []
  let score: OutlineScore | null = null
  let metFromTouch: number | null = null
  let longestAnswerMs = 0
  let longestSliceMs = 0
  while (touches.length < MOST_TOUCHES) {
    const touch = nextTouch(truth.slab.top_outline_px, outlinePx, picture, touches.length === 0)
    if (touch === null) break
    touches.push(touch)
    const answer = finished(tracer.outline(touches))
    outlinePx = rounded(answer.value.ringPx)
    longestAnswerMs = Math.max(longestAnswerMs, answer.tookMs)
    longestSliceMs = Math.max(longestSliceMs, answer.longestSliceMs)
    score = scoreOutline(truth, outlinePx)
    if (!meets(score)) metFromTouch = null
    else metFromTouch ??= touches.length
  }
  if (score === null) throw new Error(`${photo}: the truth has no outline`)
  let voidsPx = finished(voidProposals(picture, outlinePx)).value.map(({ ringPx }) => ringPx)
  if (spoilMm > 0) {
    outlinePx = rounded(shifted(outlinePx, truth, spoilMm))
    score = scoreOutline(truth, outlinePx)
    voidsPx = []
  }
  return {
    photo,
    ...score,
    voids: scoreVoids(truth, voidsPx),
    metFromTouch,
    longestAnswerMs: Math.round(longestAnswerMs),
    longestSliceMs: Math.round(longestSliceMs),
    touches,
    outlinePx,
    voidsPx,
  }
}

/** Every target that a photo or the folder misses, in words. */
export function summaryOf(lines: readonly PhotoLine[]) {
  const missed: string[] = []
  for (const line of lines) {
    if (line.medianMm > TARGETS.medianMm) missed.push(`${line.photo}: median ${line.medianMm.toFixed(2)} mm`)
    if (line.p95Mm > TARGETS.p95Mm) missed.push(`${line.photo}: 95th percentile ${line.p95Mm.toFixed(2)} mm`)
    if (Math.abs(line.areaErrorFraction) > TARGETS.areaErrorFraction) {
      missed.push(`${line.photo}: area ${(line.areaErrorFraction * 100).toFixed(2)} %`)
    }
    if (line.iou < TARGETS.iou) missed.push(`${line.photo}: intersection over union ${line.iou.toFixed(4)}`)
  }
  const sum = (of: (voids: VoidScore) => number): number =>
    lines.reduce((total, { voids }) => total + of(voids), 0)
  const real = sum((voids) => voids.real)
  const voidsFoundFraction = real === 0 ? 1 : sum((voids) => voids.found) / real
  const falseVoidsPerSlab = sum((voids) => voids.wrong) / lines.length
  if (voidsFoundFraction < TARGETS.voidsFoundFraction)
    missed.push(`voids found: ${voidsFoundFraction.toFixed(2)}`)
  if (falseVoidsPerSlab > TARGETS.falseVoidsPerSlab)
    missed.push(`false voids: ${falseVoidsPerSlab.toFixed(2)} a slab`)
  return {
    photos: lines.length,
    targets: TARGETS,
    worst: {
      medianMm: Math.max(...lines.map(({ medianMm }) => medianMm)),
      p95Mm: Math.max(...lines.map(({ p95Mm }) => p95Mm)),
      areaErrorFraction: Math.max(...lines.map(({ areaErrorFraction }) => Math.abs(areaErrorFraction))),
      iou: Math.min(...lines.map(({ iou }) => iou)),
    },
    voidsFoundFraction,
    falseVoidsPerSlab,
    missed,
  }
}
