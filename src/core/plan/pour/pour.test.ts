import { describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatSlab } from '../../../../tests/support/flatPlan'
import { randomPlan } from '../../../../tests/support/randomPlan'
import { gapVolumeMm3, RESIN_NOTICE_CODES } from '../../resin'
import { blankResin } from '../blankPlan'
import { computePlan } from '../computePlan'
import { describeIssue } from '../describeIssue'
import { ISSUE_CODES } from '../issue'
import type { Part } from '../part'
import type { Option, Plan } from '../schema'
import { pourNoticeTexts } from '../text/en/pourNotices'
import { answerPour } from './answerPour'
import { ANSWERS_ON_THE_SPOT } from './slowAnswers'

/** 60 mm short along the near side: a gap of 2000 × 60 mm, 50 mm deep; oversize none. */
const shortSlab = flatSlab({ outline: flatBox(-200, -150, 2000, 640) })
const shortOption = flatOption(2000, 800, { xMm: -100, yMm: -100 })

const planWith = (resin: Partial<Option['resin']>, slab = shortSlab): Plan =>
  flatPlan(slab, { ...shortOption, resin: { ...shortOption.resin, ...resin } })

function valueOf<T>(part: Part<T>): T {
  if (part.state !== 'ready') throw new Error(`the part is ${part.state}`)
  return part.value
}

function resultOf(plan: Plan) {
  const result = computePlan(plan, ANSWERS_ON_THE_SPOT)
  const option = result.options.get('option')
  if (option === undefined) throw new Error('no option')
  return { option, issues: result.issues, resin: valueOf(option.resin) }
}

describe('what the form takes', () => {
  it('POUR-1 is filled to the cast, or to the flood above wood and cast (by hand)', () => {
    expect(resultOf(planWith({})).resin).toMatchObject({ castThicknessMm: 50, levelMm: 50 })
    // 2000 × 60 × 51.5 mm = 6.18 L in the gap; 2000 × 740 × 1.5 mm = 2.22 L over the wood.
    const { resin } = resultOf(planWith({ floodMm: 1.5 }))
    expect(resin.levelMm).toBe(51.5)
    expect(resin.gapLitres).toBeCloseTo(8.4, 3)
    expect(resin.floodCoatLitres).toBeCloseTo(2.4, 3)
    // A cast below the face of the wood is flooded from that face.
    expect(resultOf(planWith({ castThicknessMm: 40, floodMm: 2 })).resin.levelMm).toBe(52)
  })

  it('POUR-2 adds the clearance along every side on which a gap opens (by hand)', () => {
    // The gap opens on the near side (2000) and on both ends (800 each): 3600 × 3 × 50 mm = 0.54 L.
    const { resin } = resultOf(planWith({ clearanceMm: 3 }))
    expect(resin.clearanceLitres).toBeCloseTo(0.54, 6)
    expect(resin.gapLitres).toBeCloseTo(6.54, 4)
  })

  it('POUR-3 adds two thirds of the box under a cupped slab (Archimedes)', () => {
    // 2000 × 740 mm of wood, 3 mm hollow: ⅔ · 1.48 m² · 3 mm = 2.96 L.
    expect(resultOf(planWith({ underCupMm: 3 })).resin.underLitres).toBeCloseTo(2.96, 3)
  })

  it('POUR-4 takes what was measured on the dry fit instead of the sum, and says so', () => {
    const { resin, option } = resultOf(planWith({ measuredLitres: 7 }))
    expect(resin).toMatchObject({ gapLitres: 7, isMeasured: true })
    expect(resin.mixLitres).toBeCloseTo(7.7, 9)
    expect(resin.computedLitres).toBeCloseTo(6, 4)
    expect(valueOf(option.pour).need?.gapLitres).toBe(7)
    const layers = valueOf(option.pour).heat?.layers ?? []
    expect(layers.reduce((sum, { need }) => sum + need.gapLitres, 0)).toBeCloseTo(7, 6)
  })

  it('POUR-4 seals the wood round the gaps and along the form, and the faces if asked (by hand)', () => {
    const coat = (covers: 'edges' | 'edges-and-faces') =>
      resultOf(planWith({ sealCoat: { kind: 'coat', covers, gramsPerM2: 200 } })).resin.sealKg
    // Along the gap 2000, along the form 3600: 5600 × 50 mm = 0.28 m²; faces 2 · 1.48 m².
    expect(coat('edges')).toBeCloseTo(0.28 * 0.2, 4)
    expect(coat('edges-and-faces')).toBeCloseTo((0.28 + 2.96) * 0.2, 4)
    expect(resultOf(planWith({})).resin.sealKg).toBe(0)
  })

  it('POUR-5 has the pour fill just what the litres say, whatever the plan', () => {
    let poured = 0
    for (let seed = 1; seed <= 12; seed += 1) {
      const result = computePlan(randomPlan(seed))
      for (const option of result.options.values()) {
        if (option.pourTask.state !== 'ready') continue
        const { gaps, need } = answerPour(option.pourTask.value)
        const { computedLitres, mixLitres, mixKg } = valueOf(option.resin)
        const litres = gaps.reduce((sum, gap) => sum + gapVolumeMm3(gap, 0, 1e4), 0) / 1e6
        expect(Math.abs(litres - computedLitres)).toBeLessThanOrEqual(1e-9 * (1 + computedLitres))
        if (need === null) continue
        poured += 1
        expect(Math.abs(need.mixLitres - mixLitres)).toBeLessThanOrEqual(1e-9 * (1 + mixLitres))
        expect(need.massKg).toBeCloseTo(mixKg ?? NaN, 9)
      }
    }
    expect(poured).toBeGreaterThan(5)
  })
})

describe('the pour of a plan', () => {
  it('POUR-6 is pending until it is answered, and the same whoever answers', () => {
    const plan = planWith({})
    const waiting = computePlan(plan).options.get('option')
    expect(waiting?.pour).toEqual({ state: 'pending' })
    if (waiting?.pourTask.state !== 'ready') throw new Error('no task')
    // As it comes out of a worker's door.
    const sent = structuredClone(waiting.pourTask.value)
    expect(answerPour(sent)).toEqual(valueOf(resultOf(plan).option.pour))
    expect(answerPour(sent)).toEqual(structuredClone(answerPour(sent)))
  })

  it('POUR-6 is the very same result while the plan is', () => {
    const plan = planWith({})
    const answers = { pour: () => answer, build: () => null, isDraft: false }
    const answer = valueOf(resultOf(plan).option.pour)
    expect(computePlan(plan, answers).options.get('option')).toBe(
      computePlan(plan, answers).options.get('option'),
    )
  })

  it('POUR-5 measures the gap across, the clearance included', () => {
    const { gaps, heat } = valueOf(resultOf(planWith({ clearanceMm: 3 })).option.pour)
    const edge = gaps.find(({ kind }) => kind === 'edge')
    expect(edge?.sections[0]?.widestMm).toBeGreaterThan(63 * 0.98)
    expect(edge?.sections[0]?.widestMm).toBeLessThanOrEqual(63 + 1e-6)
    expect(heat?.layers[0]?.widestName).toBe(edge?.name)
    expect(gaps.map(({ kind }) => kind).toSorted()).toEqual(['clearance', 'edge'])
  })

  it('POUR-5 pours 50 mm of a resin sold for 50 mm at 21 °C in two layers: nine tenths of the sheet are planned', () => {
    const { heat } = valueOf(resultOf(planWith({})).option.pour)
    expect(heat?.limit.planMm).toBeCloseTo(45, 6)
    expect(heat?.layers.map(({ depthMm }) => depthMm)).toEqual([25, 25])
  })

  it('POUR-7 makes issues of what the pour calls for, each of one place once', () => {
    const { issues } = resultOf(planWith({ room: { kind: 'steady', roomC: 10 } }))
    const cold = issues.find(({ code }) => code === 'room-colder-than-sheet')
    expect(cold).toMatchObject({ severity: 'warning', at: ['options', 'option', 'pour'] })
    expect(cold && describeIssue(cold, { system: 'mm' })).toContain('10 °C')
    expect(new Set(issues.map(({ id }) => id)).size).toBe(issues.length)
  })

  it('POUR-7 gives what can be given where the sheet cannot be used, and names the figure', () => {
    const sheet = { ...blankResin().sheet, ratioByVolume: { resin: 0, hardener: -1 }, deepestLayerMm: -4 }
    const { option, issues, resin } = resultOf(planWith({ sheet }))
    expect(resin.gapLitres).toBeCloseTo(6, 4)
    expect(valueOf(option.pour).heat).toBeNull()
    expect(valueOf(option.pour).need?.gapLitres).toBeCloseTo(6, 4)
    const codes = issues.filter(({ severity }) => severity === 'blocker').map(({ code }) => code)
    expect(codes).toEqual(expect.arrayContaining(['ratio-not-positive', 'figure-unusable']))
  })

  it('POUR-7 says that there is nothing to pour where wood fills the form', () => {
    const covered = flatPlan(flatSlab(), flatOption(1000, 500, { xMm: 0, yMm: 0 }))
    const { option, issues } = resultOf(covered)
    expect(option.pour.state).toBe('blocked')
    expect(
      issues.filter(({ code }) => code === 'pour-nothing-to-fill').map(({ severity }) => severity),
    ).toEqual(['note'])
  })

  it('POUR-6 fits to three logged pours of one’s own and says how they compare', () => {
    const log = [40, 45, 50].map((depthMm, index) => ({
      id: `p${index}`,
      name: `pour ${index + 1}`,
      depthMm,
      widthMm: null,
      roomC: 21,
      resinC: 21,
      air: 'still' as const,
      surfacePeakC: 34 + 4 * index,
      peakHours: null,
    }))
    const { refit } = valueOf(resultOf(planWith({ log })).option.pour)
    expect(refit?.pours.map(({ loggedC }) => loggedC)).toEqual([34, 38, 42])
    expect(refit?.fit).not.toBeNull()
    const { option, issues } = resultOf(planWith({ log: log.slice(0, 2) }))
    expect(valueOf(option.pour).refit?.fit).toBeNull()
    expect(issues.map(({ code }) => code)).toContain('log-too-short')
  })
})

describe('sentences of the pour', () => {
  const VALUES = {
    ...Object.fromEntries(
      [
        'sumMm',
        'depthMm',
        'castDepthMm',
        'formHeightMm',
        'usualMm',
        'modelMm',
        'sheetMm',
        'limitMm',
        'leastMm',
      ].map((name) => [name, 45]),
    ),
    widthMm: 260,
    testWidthMm: 150,
    countsAsMm: 60,
    thinnerByMm: 3,
    liftMm: 1.3,
    deepestLayerMm: 50,
    figure: 'recoatLeastHours',
    value: -4,
    surfacePeakLimitC: 20,
    referenceC: 21,
    resin: 0,
    hardener: -1,
    statedHardenerPer100: 43,
    foundHardenerPer100: 50,
    statedKgPerM3: 1080,
    foundKgPerM3: 1150,
    roomC: 31,
    resinC: 12,
    leastC: 18,
    coreC: 93.4,
    limitC: 71.2,
    coreLimitC: 71,
    belowC: 47,
    surfaceC: 52,
    betterCoreC: 53,
    startHour: 8,
    betterHour: 20,
    hour: 27.5,
    hours: 50,
    leastHours: 24,
    greatestHours: 72,
    handlingMinutes: 30,
    workingMinutes: 22,
    gapName: 'gap 1 at the far side',
    pieceName: 'the slab',
    packName: '6 L',
    entryName: 'first pour',
    firstName: 'first pour',
    secondName: 'second pour',
    layer: 2,
    layers: 1,
    greatest: 60,
    massKg: 24,
    greatestKg: 20,
    dyeFraction: 0.07,
    greatestFraction: 0.05,
    percent: 12,
    forceN: 850,
    pours: 2,
    leastPours: 3,
    factor: 1.6,
  } as const

  it('POUR-7 there is one for every notice of core/resin, and no other', () => {
    expect(Object.keys(pourNoticeTexts).toSorted()).toEqual([...RESIN_NOTICE_CODES].toSorted())
    expect(ISSUE_CODES).toContain('pour-nothing-to-fill')
  })

  it.each(RESIN_NOTICE_CODES)('POUR-7 says what is wrong and what to do: %s', (code) => {
    for (const display of [{ system: 'mm' }, { system: 'inch', fraction: 16 }] as const) {
      const issue = { id: code, code, severity: 'warning', at: [], values: VALUES } as const
      const sentence = describeIssue(issue, display)
      expect(sentence).toMatch(/^[A-Z].*[.]$/)
      expect(sentence).not.toMatch(/undefined|NaN|\{|\}|(?<![.\d])0 (mm|°C|kg|h)\b/)
      expect(sentence.length).toBeGreaterThan(30)
      expect(sentence.length).toBeLessThan(270)
    }
  })

  it('POUR-7 gives degrees and millimetres whole', () => {
    const issue = { id: '', code: 'layer-runs-hot', severity: 'warning', at: [], values: VALUES } as const
    expect(describeIssue(issue, { system: 'mm' })).toContain('about 93 °C, over the limit of 71 °C')
  })
})
