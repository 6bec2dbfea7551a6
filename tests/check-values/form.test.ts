import { describe, expect, it } from 'vitest'
import {
  carrierShares,
  type FormPlan,
  formParts,
  LOAD_CONSTANT_KG,
  longestRoundTurnMm,
  rectangleFits,
  stance,
} from '../../src/core/form'
import { tablePoint } from '../../src/core/geometry'
import rows from './form.json'

type Given = Readonly<Record<string, number>>

const num = (given: Given, key: string): number => given[key] ?? NaN

const planOf = (given: Given): FormPlan =>
  formParts({
    innerLengthMm: 2010,
    innerWidthMm: 910,
    stripSides: ['start', 'end', 'far', 'near'],
    castMm: num(given, 'castMm'),
    aboveMm: 25,
    boardMm: 18,
    beyondMm: 40,
    backingMm: 150,
    screwEveryMm: 150,
    sheet: [2440, 1220],
    wetAtMm: () => 0,
    resinKgPerM3: num(given, 'resinKgPerM3'),
  })

function tipsAtKg(given: Given): number {
  const [holdMm, overhangMm] = [num(given, 'holdMm'), num(given, 'overhangMm')]
  const [feet, top] = [holdMm, holdMm + overhangMm].map((reach) => [
    tablePoint(-reach, -1),
    tablePoint(reach, -1),
    tablePoint(reach, 1),
    tablePoint(-reach, 1),
  ])
  const load = { massKg: num(given, 'massKg'), centre: tablePoint(0, 0) }
  return stance(top ?? [], feet ?? [], load, 0).worst?.tipsAtKg ?? NaN
}

function widestInSquareMm(given: Given): number {
  let [fits, fails] = [0, num(given, 'sideMm')]
  for (let step = 0; step < 60; step += 1) {
    const middle = (fits + fails) / 2
    const side = num(given, 'sideMm')
    if (rectangleFits([num(given, 'lengthMm'), middle], [side, side])) fits = middle
    else fails = middle
  }
  return fits
}

const MEASURES: Readonly<Record<string, (given: Given) => number>> = {
  pressurePa: (given) => planOf(given).load.pressurePa,
  thrustNPerM: (given) => planOf(given).load.thrustNPerM,
  pullPerScrewN: (given) => planOf(given).load.pullPerScrewN,
  baseLengthMm: (given) => planOf(given).baseLengthMm,
  caulkMm: (given) => planOf(given).caulkMm,
  releaseAreaMm2: (given) => planOf(given).releaseAreaMm2,
  loadConstantKg: () => LOAD_CONSTANT_KG,
  teamGuideKg: (given) =>
    carrierShares(1).find(({ carriers }) => carriers === given['carriers'])?.teamGuideKg ?? NaN,
  tipsAtKg,
  turnMm: (given) =>
    longestRoundTurnMm(num(given, 'beforeMm'), num(given, 'afterMm'), num(given, 'thicknessMm')),
  widestInSquareMm,
}

describe('figures from outside of the project', () => {
  it.each(rows)('FORM-1 FORM-4 HAND-1 HAND-3 HAND-5 HAND-6 $id: $expect $unit', (row) => {
    const found = MEASURES[row.measure]?.(row.in as Given) ?? NaN
    expect(Math.abs(found - row.expect)).toBeLessThanOrEqual(row.tolerance)
  })

  it('FORM-1 every row names its source, and every measure has a row', () => {
    expect(rows.filter(({ source }) => (source.title ?? source.working ?? '') === '')).toEqual([])
    expect([...new Set(rows.map(({ measure }) => measure))].toSorted()).toEqual(
      Object.keys(MEASURES).toSorted(),
    )
  })
})
