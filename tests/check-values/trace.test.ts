import { describe, expect, it } from 'vitest'
import { type Point, pxPoint } from '../../src/core/geometry'
import { EdgeFollower, type Picture } from '../../src/core/trace'
import { openCv, OpenCvFollower } from '../support/openCv'
import rows from './trace.json'

const WIDE = 200
const HIGH = 100

type Grey = (x: number, y: number) => number

/** Bresenham's line, as the library draws it one pixel thick. */
function linePlaces([x0, y0]: Point, [x1, y1]: Point): Set<number> {
  const steps = Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0))
  const places = new Set<number>()
  for (let n = 0; n <= steps; n++) {
    const x = Math.round(x0 + ((x1 - x0) * n) / steps)
    places.add(Math.round(y0 + ((y1 - y0) * n) / steps) * WIDE + x)
  }
  return places
}

function linesScene(): Grey {
  const dark = [
    linePlaces([30, 50], [50, 50]),
    linePlaces([50, 50], [80, 30]),
    linePlaces([150, 50], [80, 30]),
    linePlaces([150, 50], [180, 50]),
  ]
  const light = [80, 100, 120].map((x) => linePlaces([x, 10], [x, 90]))
  return (x, y) => {
    const at = y * WIDE + x
    if (light.some((places) => places.has(at))) return 200
    return dark.some((places) => places.has(at)) ? 0 : 128
  }
}

const wave = (x: number, y: number): number => 100 * Math.sin((Math.hypot(x - 100, y - 100) / 10) * Math.PI)

const SCENES: Readonly<Record<string, () => Grey>> = {
  lines: linesScene,
  circles: () => (x, y) => 100 + wave(x, y),
  slope: () => (x, y) => x / 2 + wave(x, y),
}

function pictureOf(scene: string): Picture {
  const grey = SCENES[scene]?.()
  if (grey === undefined) throw new Error(`no scene ${scene}`)
  const rgba = new Uint8ClampedArray(WIDE * HIGH * 4).fill(255)
  for (let y = 0; y < HIGH; y++) {
    for (let x = 0; x < WIDE; x++) {
      const value = Math.max(0, Math.min(255, Math.round(grey(x, y))))
      rgba.fill(value, (y * WIDE + x) * 4, (y * WIDE + x) * 4 + 3)
    }
  }
  return { widthPx: WIDE, heightPx: HIGH, rgba: new Uint8Array(rgba.buffer) }
}

const at = ([x = NaN, y = NaN]: readonly number[]): Point => [x, y]

describe('check values of the edge follow', () => {
  it.each(rows.map((row) => [row.id, row] as const))('TRC-10 %s', (_, row) => {
    expect(row.source.title).not.toBe('')
    const follower = new EdgeFollower(pictureOf(row.scene))
    const [x0, y0] = at(row.from)
    const [x1, y1] = at(row.to)
    follower.start(pxPoint(x0 + 0.5, y0 + 0.5))
    const { livePx } = follower.moveTo(pxPoint(x1 + 0.5, y1 + 0.5))
    expect(Math.abs(livePx.length - row.expect.places)).toBeLessThanOrEqual(row.tolerance)
  })

  it('the library itself gives the published figures on these scenes', { timeout: 120_000 }, async () => {
    const cv = await openCv()
    for (const row of rows) {
      const tool = new OpenCvFollower(cv, pictureOf(row.scene), row.gradientLimit ?? 0)
      tool.start(at(row.from))
      // The library is held to its own figures exactly: the scenes are drawn right.
      expect(tool.wayTo(at(row.to))).toHaveLength(row.expect.places)
      tool.end()
    }
  })
})
