import { describe, expect, it } from 'vitest'
import { hottestOfGap } from './gapInTwoDimensions'
import { pourFigure, secondLayer, sheetFit } from './pourMeasures'
import { MEASURES, RESIN_CHECKS, agrees, foundValue, type ResinCheck } from './resinChecks'

const titleOf = (check: ResinCheck): string => {
  const { kind, title, use } = check.source
  return `${check.rule} ${check.id}: ${check.expect} ± ${check.tolerance} ${check.unit} (${use === undefined ? kind : `${title}; ${use}`})`
}

describe('figures from outside of the project', () => {
  it.each(RESIN_CHECKS.map((check) => [titleOf(check), check] as const))('%s', (_title, check) => {
    expect(Math.abs(foundValue(check) - check.expect)).toBeLessThanOrEqual(check.tolerance)
  })

  it('RES-4 every row names its source, and a rule of the trade says whether the model was fitted to it', () => {
    const unnamed = RESIN_CHECKS.filter(({ source }) => {
      if (source.kind === 'common-practice')
        return source.title !== 'common practice, no source' || source.use === undefined
      return source.title === '' || (source.kind === 'published' && (source.read ?? '') === '')
    })
    expect(unnamed.map(({ id }) => id)).toEqual([])
  })

  it('RES-4 the published checks that the issue names are there', () => {
    const ids = RESIN_CHECKS.map(({ id }) => id)
    for (const id of [
      'wall-centre-bi-1-fo-0.5',
      'critical-slab',
      'critical-slab-bi-5',
      'critical-slab-bi-1',
      'adiabatic-end-generic',
      'energy-balance',
      'closed-form-0.75-0.577',
      'square-frustum',
    ])
      expect(ids).toContain(id)
  })

  it('RES-4 every measure has a row and every id is its own', () => {
    expect([...new Set(RESIN_CHECKS.map(({ measure }) => measure))].sort()).toEqual(
      Object.keys(MEASURES).sort(),
    )
    expect(new Set(RESIN_CHECKS.map(({ id }) => id)).size).toBe(RESIN_CHECKS.length)
  })

  it('RES-4 every row refuses a figure two tolerances away, and none at all', () => {
    const lenient = RESIN_CHECKS.filter(
      (check) => agrees(check, check.expect + 2 * check.tolerance) || agrees(check, NaN),
    )
    expect(lenient.map(({ id }) => id)).toEqual([])
  })
})

describe('spoiled physics is noticed', () => {
  const rowsOf = (measure: string): readonly ResinCheck[] =>
    RESIN_CHECKS.filter((check) => check.measure === measure)

  it('RES-5 three per cent more heat transfer fails the wall in air', () => {
    const spoiled = rowsOf('plane-wall').filter(({ in: given }) => given['biot'] === 1)
    expect(spoiled.length).toBeGreaterThan(3)
    const unnoticed = spoiled.filter((check) =>
      agrees(check, foundValue({ ...check, in: { ...check.in, biot: 1.03 } })),
    )
    expect(unnoticed.map(({ id }) => id)).toEqual([])
  })

  it('RES-4 half a per cent more time fails the isothermal laws', () => {
    const exact = rowsOf('isothermal-degree').filter(({ tolerance }) => tolerance < 1e-4)
    expect(exact.length).toBeGreaterThan(3)
    const unnoticed = exact.filter((check) => {
      const timeS = Number(check.in['timeS']) * 1.005
      return agrees(check, foundValue({ ...check, in: { ...check.in, timeS } }))
    })
    expect(unnoticed.map(({ id }) => id)).toEqual([])
  })

  it('RES-8 a second layer that forgets the warm one beneath it stays cool, and fails', () => {
    const check = rowsOf('second-layer').find(({ id }) => id === 'second-layer-after-15')
    const alone = pourFigure({ depthMm: 50, roomC: 21, figure: 'core' })
    expect(check !== undefined && agrees(check, alone)).toBe(false)
    expect(secondLayer({ depthMm: 50, roomC: 21, waitHours: 15 })).toBeGreaterThan(2 * alone)
  })

  it('RES-7 a gap without its side loss fails the program in two dimensions', () => {
    const check = rowsOf('pour').find(({ id }) => id === 'gap-200-mm')
    expect(check !== undefined && agrees(check, pourFigure({ depthMm: 50, roomC: 21, figure: 'core' }))).toBe(
      false,
    )
  })
})

describe('an independent program: the gap in two dimensions', () => {
  it.each([50, 150, 300])('RES-7 the core of a gap of %i mm agrees within 3 K', (gapMm) => {
    const { chemistry } = sheetFit().nominal
    const expected = hottestOfGap({
      gapMm,
      depthMm: 50,
      roomC: 21,
      woodWPerMK: 0.16,
      resin: {
        ratePerS: chemistry.referenceRatePerS,
        referenceC: chemistry.referenceC,
        activationJPerMol: chemistry.activationEnergyJPerMol,
        startShare: chemistry.startShare,
        fullRiseK: chemistry.reactionHeatJPerKg / chemistry.heatCapacityJPerKgK,
      },
    })
    const found = pourFigure({ depthMm: 50, roomC: 21, widthMm: gapMm, figure: 'core' })
    expect(Math.abs(found - expected)).toBeLessThanOrEqual(3)
  })
})
