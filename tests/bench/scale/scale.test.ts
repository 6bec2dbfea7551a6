import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { benchPhoto, CONDITIONS, type PhotoLine } from './benchPhoto'
import { benchReferences } from './benchReference'
import { type Figures, figuresOf } from './figures'
import { photosWithTruth, readBenchPhoto, truthPx } from './photoTruth'
import { prepareBench, refinedClicks, runTrial } from './scaleTrials'
import { missedTargets } from './targets'

const PHOTOS = fileURLToPath(new URL('../../photos', import.meta.url))

describe('the bench of true size', () => {
  it('reads every photo that has a truth, and its own camera agrees with the truth’s pixels', () => {
    expect(photosWithTruth(PHOTOS)).toEqual(['d1.jpg', 'd2.jpg', 'd3.jpg', 'd4.jpg'])
    const { truth } = readBenchPhoto(PHOTOS, 'd2.jpg')
    truth.slab.top_outline_mm.forEach(([x, y], i) => {
      const [u, v] = truthPx(truth, x, y, 0)
      const [tu, tv] = truth.slab.top_outline_px[i] ?? [0, 0]
      expect(Math.hypot(u - tu, v - tv)).toBeLessThan(0.01)
    })
  })

  it('meets the targets on d2 with a few trials, and is the same when run again', () => {
    const line = benchPhoto(PHOTOS, 'd2.jpg', 4, 3)
    const flat = line.conditions['flat, line']
    expect(flat?.medianErrorPercent).toBeLessThan(0.1)
    expect(flat?.p95ErrorPercent).toBeLessThan(0.4)
    expect(flat?.coveragePercent).toBeGreaterThan(85)
    expect(line.firstTrial['flat, line']).toHaveLength(30)
    expect(Object.keys(line.conditions)).toEqual(CONDITIONS.map((c) => c.name))
    expect(benchPhoto(PHOTOS, 'd2.jpg', 1, 3)).toEqual(benchPhoto(PHOTOS, 'd2.jpg', 1, 3))
  }, 120_000)

  it('notices a board whose thickness is left out, an unrefined click passed off as refined, and a lens left out', () => {
    const photo = readBenchPhoto(PHOTOS, 'd1.jpg')
    const { known } = benchReferences(photo.truth)
    const flat = CONDITIONS.find((c) => c.name === 'flat, line')
    if (!flat) throw new Error('no condition')
    const bench = prepareBench(photo, known, 3)
    const clicks = [0, 1, 2, 3, 4, 5].map((n) => refinedClicks(bench, n))
    const figures = (changed: typeof bench, refined: typeof clicks): Figures =>
      figuresOf(refined.map((c, n) => runTrial(changed, c, flat, 90 + n)))
    const honest = figures(bench, clicks)
    // Six trials only: near the target, which the bench itself judges by 200.
    expect(honest.medianErrorPercent).toBeLessThan(0.15)
    const thin = { ...bench, references: known.map((r) => ({ ...r, heightMm: 0 })) }
    const blind = clicks.map((c) =>
      c.map((r) => ({
        sides: [],
        clicks: r.clicks.map((click, i) => ({ ...click, px: shifted(click.px, i) })),
      })),
    )
    const straight = { ...bench.photo.truth, camera: { ...bench.photo.truth.camera, k1: 0.2 } }
    const spoiled = [
      figures(thin, clicks),
      figures(bench, blind),
      figures({ ...bench, photo: { ...photo, truth: straight } }, clicks),
    ]
    for (const worse of spoiled) {
      expect(worse.medianErrorPercent).toBeGreaterThan(1.5 * honest.medianErrorPercent)
      expect(missedTargets([lineOf('d1', worse)]).join()).toContain('of length')
    }
  }, 120_000)

  it('fails when a target is missed, whichever it is', () => {
    const good = {
      trials: 200,
      failed: 0,
      medianErrorPercent: 0.08,
      p95ErrorPercent: 0.3,
      coveragePercent: 95,
      sdOverRms: 1,
      medianStatedPercent: 0.1,
      areaMedianErrorPercent: 0.1,
      areaP95ErrorPercent: 0.3,
      areaCoveragePercent: 95,
      problems: [],
    }
    expect(missedTargets([lineOf('x', good)])).toEqual([])
    for (const worse of [
      { medianErrorPercent: 0.11 },
      { p95ErrorPercent: 0.41 },
      { coveragePercent: 89.9 },
      { coveragePercent: 99.1 },
      { sdOverRms: 0.69 },
      { sdOverRms: 1.51 },
      { failed: 1 },
      { medianErrorPercent: Number.NaN },
    ]) {
      expect(missedTargets([lineOf('x', { ...good, ...worse })])).not.toEqual([])
    }
    const less = { ...lineOf('y', good), full: false }
    expect(missedTargets([less])).not.toEqual([])
    const says = {
      ...lineOf('y', { ...good, coveragePercent: 100, problems: ['length-alone'] }),
      full: false,
    }
    expect(missedTargets([says])).toEqual([])
  })
})

/** A photo's line in which every condition came out alike. */
const lineOf = (photo: string, figures: PhotoLine['conditions'][string]): PhotoLine => ({
  photo,
  references: ['board'],
  unknownReferences: [],
  full: true,
  refinement: { surePercent: 100, medianErrorPx: 0.2, p95ErrorPx: 0.3 },
  conditions: Object.fromEntries(CONDITIONS.map((c) => [c.name, figures])),
  firstTrial: {},
  allTrials: {},
})

/** A thumb's error in a place where a refined click is due. */
const shifted = ([x, y]: readonly [number, number], i: number): never =>
  [x + (i % 2 === 0 ? 3 : -3), y + (i < 2 ? 3 : -2)] as never
