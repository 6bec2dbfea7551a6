import { describe, expect, it } from 'vitest'
import type { Point, PxPoint } from '../../src/core/geometry'
import { pxPoint } from '../../src/core/geometry'
import { EdgeFollower, type Picture } from '../../src/core/trace'
import { photoPixels } from '../support/jpegs'
import { openCv, OpenCvFollower } from '../support/openCv'
import { readTruth } from '../support/truth'
import { distancesToRing, truthMmFromPx } from './trace/score'

const CLICKS = 20
const MOVE_VERTICES = 6
const MOST_P95_MS = 16
const MOST_PREPARATION_MS = 1000

const share = (values: readonly number[], fraction: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(fraction * values.length)] ?? NaN

/** Pins along the true edge, and the pointer's moves from each to the next, the pin's own place last. */
function walks(edge: readonly PxPoint[]): readonly (readonly PxPoint[])[] {
  return Array.from({ length: CLICKS }, (_, click) => {
    const from = Math.round((click * edge.length) / CLICKS)
    const to = Math.round(((click + 1) * edge.length) / CLICKS)
    const moves = edge.slice(from, to).filter((_place, n) => n > 0 && n % MOVE_VERTICES === 0)
    return [...moves, edge[to % edge.length] ?? pxPoint(0, 0)]
  })
}

/** The same photo without anything in it. */
const flat = (picture: Picture): Picture => ({
  ...picture,
  rgba: new Uint8Array(picture.rgba.length).fill(128),
})

interface Run {
  readonly moveMs: readonly number[]
  readonly totalMs: number
  readonly line: readonly Point[]
}

function ours(follower: EdgeFollower, edge: readonly PxPoint[]): Run {
  const moveMs: number[] = []
  const start = performance.now()
  follower.start(edge[0] ?? pxPoint(0, 0))
  for (const moves of walks(edge)) {
    for (const place of moves) {
      const before = performance.now()
      follower.moveTo(place)
      moveMs.push(performance.now() - before)
    }
    follower.pin()
  }
  return { moveMs, totalMs: performance.now() - start, line: follower.line().acceptedPx }
}

function theirs(tool: OpenCvFollower, edge: readonly PxPoint[]): Run {
  const moveMs: number[] = []
  const line: Point[] = []
  const start = performance.now()
  let pin = edge[0] ?? pxPoint(0, 0)
  for (const moves of walks(edge)) {
    // The map of all ways is built at the pin; the first move waits for it.
    let before = performance.now()
    tool.start(pin)
    let way: readonly Point[] = []
    for (const place of moves) {
      way = tool.wayTo(place)
      moveMs.push(performance.now() - before)
      pin = place
      before = performance.now()
    }
    line.push(...way)
  }
  return { moveMs, totalMs: performance.now() - start, line }
}

describe('edge follow', () => {
  const truth = readTruth('d2')
  const edge = truth.slab.top_outline_px.map(([x, y]) => pxPoint(x, y))
  const misses = (line: readonly Point[]): readonly number[] =>
    distancesToRing(
      line.map((place) => truthMmFromPx(truth, place)),
      truth.slab.top_outline_mm,
    )

  it('answers within a frame on 12 megapixels, after less than a second of preparation', () => {
    const picture = photoPixels('d2', '12 MP')
    const scale = picture.widthPx / truth.photo.width_px
    const large = edge.map(([x, y]) => pxPoint(x * scale, y * scale))
    // The first run warms the machine up; the best of three bears a busy one.
    const runs = [0, 1, 2].map(() => {
      const before = performance.now()
      const follower = new EdgeFollower(picture)
      return { preparationMs: performance.now() - before, ...ours(follower, large) }
    })
    const preparationMs = Math.min(...runs.map((run) => run.preparationMs))
    const p95Ms = Math.min(...runs.map(({ moveMs }) => share(moveMs, 0.95)))
    const [{ moveMs } = { moveMs: [] }] = runs
    console.log(
      `12 MP: preparation ${preparationMs.toFixed(0)} ms; ${moveMs.length} moves, 95th percentile ${p95Ms.toFixed(1)} ms`,
    )
    expect(preparationMs).toBeLessThan(MOST_PREPARATION_MS)
    expect(p95Ms).toBeLessThan(MOST_P95_MS)
  })

  const isNoFarther = (our: Run, their: Run): boolean =>
    [0.5, 0.95].every((part) => share(misses(our.line), part) <= share(misses(their.line), part))

  it('is no slower and no farther from the truth than an independent implementation of the method', async () => {
    const picture = photoPixels('d2', '6.75 MP')
    const tool = new OpenCvFollower(await openCv(), picture)
    const their = theirs(tool, edge)
    tool.end()
    const our = ours(new EdgeFollower(picture), edge)
    const told = ([name, { moveMs, totalMs, line }]: readonly [string, Run]): string => {
      const mm = misses(line)
      return `${name}: ${(totalMs / moveMs.length).toFixed(1)} ms a move with its pins, 95th percentile ${share(moveMs, 0.95).toFixed(1)} ms; off by ${share(mm, 0.5).toFixed(2)} mm (median), ${share(mm, 0.95).toFixed(2)} mm (95th percentile)`
    }
    console.log(
      (
        [
          ['ours', our],
          ['the library', their],
        ] as const
      )
        .map(told)
        .join('\n'),
    )
    expect(our.moveMs.length).toBe(their.moveMs.length)
    expect(our.totalMs).toBeLessThanOrEqual(their.totalMs)
    expect(isNoFarther(our, their)).toBe(true)
    // The sabotage case: with the edge taken out of its sight the follower must fail the same comparison.
    const blind = ours(new EdgeFollower(flat(picture)), edge)
    expect(isNoFarther(blind, their)).toBe(false)
  })
})
