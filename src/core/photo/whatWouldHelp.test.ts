import { describe, expect, it } from 'vitest'
import { markInput, scene, seen } from '../../../tests/check-values/photo.scene'
import type { PxPoint } from '../geometry'
import type { ScaleInput } from './scaleInput'
import { slabScaleFromMarks } from './slabScale'
import type { SlabScale } from './scaleOfPhoto'
import { measuredLengthMm } from './uncertainty'
import { whatWouldHelp } from './whatWouldHelp'

const at = scene({ tilt: 0.75 })
const probes: readonly PxPoint[] = (
  [
    [-1100, 420],
    [1080, 400],
    [1100, -430],
    [-1090, -410],
  ] as const
).map((p) => seen(at, p))

const scaleOf = (input: ScaleInput): SlabScale => {
  const { scale } = slabScaleFromMarks(input)
  if (!scale) throw new Error('no scale')
  return scale
}

/** Root mean square deviation of the lengths between the probes. */
function rmsSd(scale: SlabScale): number {
  const variances = probes.flatMap((p, i) =>
    probes.slice(i + 1).map((q) => measuredLengthMm(scale, p, q, 0).sd ** 2),
  )
  return Math.sqrt(variances.reduce((a, b) => a + b, 0) / variances.length)
}

describe('whatWouldHelp', () => {
  it('PHO-18 advises a straight line when the lens is what is not known, and foresees its effect', () => {
    const input = markInput(at)
    const help = whatWouldHelp(input, scaleOf(input), probes)
    expect(help[0]?.advice.kind).toBe('straight-line')
    expect(help[0]?.sdNowMm).toBeCloseTo(rmsSd(scaleOf(input)), 3)
    const pointsPx = Array.from({ length: 9 }, (_, i) => seen(at, [-1000 + 250 * i, 300]))
    const withLine = rmsSd(scaleOf({ ...input, straightLines: [{ id: 'l', pointsPx, sdPx: 0.3 }] }))
    expect(withLine).toBeLessThan(0.6 * rmsSd(scaleOf(input)))
    expect(withLine / (help[0]?.sdThenMm ?? 0)).toBeGreaterThan(0.6)
    expect(withLine / (help[0]?.sdThenMm ?? 0)).toBeLessThan(1.6)
  })

  it('PHO-18 advises a straightedge when the face was not read', () => {
    const input: ScaleInput = { ...markInput(at), flatness: { kind: 'unknown' } }
    const help = whatWouldHelp(input, scaleOf(input), probes)
    expect(help.map((h) => h.advice.kind)).toContain('read-flatness')
    const read = help.find((h) => h.advice.kind === 'read-flatness')
    const after = rmsSd(
      scaleOf({ ...input, flatness: { kind: 'read', bowMm: 0, twistMm: 0, readingSdMm: 1 } }),
    )
    expect((read?.sdThenMm ?? 0) / after).toBeGreaterThan(0.7)
    expect((read?.sdThenMm ?? 0) / after).toBeLessThan(1.3)
  })

  it('PHO-18 names the pair of marks whose distance would help most', () => {
    const full = markInput(at)
    const pointsPx = Array.from({ length: 9 }, (_, i) => seen(at, [-1000 + 250 * i, 300]))
    const known: ScaleInput = {
      ...full,
      focalLength35mm: null,
      straightLines: [{ id: 'l', pointsPx, sdPx: 0.3 }],
      tapedDistances: full.tapedDistances.filter((d) => d.id !== 'd13'),
    }
    const loose: ScaleInput = { ...known, tapedDistances: known.tapedDistances.filter((d) => d.id !== 'd24') }
    const more = whatWouldHelp(loose, scaleOf(loose), probes)
    expect(more[0]?.advice.kind).toBe('tape-distance')
    expect(more.every((h) => h.advice.kind === 'tape-distance')).toBe(true)
    expect(more[0]?.sdThenMm).toBeLessThan(more[0]?.sdNowMm ?? 0)
  })

  it('PHO-18 says nothing when all is done', () => {
    const pointsPx = Array.from({ length: 9 }, (_, i) => seen(at, [-1000 + 250 * i, 300]))
    const input: ScaleInput = { ...markInput(at), straightLines: [{ id: 'l', pointsPx, sdPx: 0.3 }] }
    expect(whatWouldHelp(input, scaleOf(input), probes)).toEqual([])
  })
})
