import { describe, expect, it } from 'vitest'
import { pourCase, settingAt } from '../../../tests/support/pourCase'
import { pourPlan } from './pourPlan'
import type { PourPlanInput } from './pourPlanInput'
import type { LayerPlan, PourHeat } from './pourPlanResult'
import { fitSheet } from './sheetFit'

const hand = (depthMm: number | null, startHour: number | null = null) => ({ depthMm, startHour })

function heatOf(input: PourPlanInput): PourHeat {
  const { heat } = pourPlan(input)
  if (heat === null) throw new Error('no heat')
  return heat
}
const layersOf = (input: PourPlanInput): readonly LayerPlan[] => heatOf(input).layers
const depthsOf = (input: PourPlanInput): readonly number[] => layersOf(input).map(({ depthMm }) => depthMm)

/** No greatest mass: the depth alone decides. */
const unweighed = (castDepthMm: number): PourPlanInput => {
  const input = pourCase(castDepthMm, settingAt(21))
  return { ...input, sheet: { ...input.sheet, greatestMassKg: null } }
}

const CASES: readonly (readonly [string, PourPlanInput])[] = [
  ['54 mm at 21 °C', pourCase(54, settingAt(21))],
  ['100 mm at 26 °C', pourCase(100, settingAt(26))],
  ['60 mm at 36 °C', pourCase(60, settingAt(36))],
  ['40 mm at 16 °C', pourCase(40, settingAt(16))],
  ['70 mm with fans', pourCase(70, { ...settingAt(23), air: 'fans' })],
  [
    '60 mm in a swinging room',
    pourCase(60, { ...settingAt(22), room: { kind: 'swing', meanC: 22, swingC: 4, warmestHour: 15 } }),
  ],
]

describe('pourPlan', () => {
  it.each(CASES)(
    'RES-17 %s: equal layers within the limit add up to the cast, and no core passes its limit',
    (_, input) => {
      const { limit, layers, fit } = heatOf(input)
      expect(layers.reduce((sum, { depthMm }) => sum + depthMm, 0)).toBeCloseTo(input.castDepthMm, 9)
      for (const { depthMm, corePeakC } of layers) {
        expect(depthMm).toBeLessThanOrEqual(limit.planMm + 1e-9)
        expect(corePeakC).toBeLessThanOrEqual(fit.nominal.coreLimitC + 0.5)
      }
      expect(new Set(layers.map(({ depthMm }) => depthMm.toFixed(6))).size).toBe(1)
    },
  )

  it.each(CASES)('RES-13 %s: litres of the layers and of their batches add up to the need', (_, input) => {
    const plan = pourPlan(input)
    const layers = plan.heat?.layers ?? []
    const sum = layers.reduce((litres, { need }) => litres + need.mixLitres, 0)
    expect(sum).toBeCloseTo(plan.need?.mixLitres ?? NaN, 9)
    for (const { batches, need } of layers)
      expect(batches.count * batches.litresEach).toBeCloseTo(need.mixLitres, 9)
  })

  it.each(CASES)(
    'RES-18 %s: every pour comes after the layer below is ready, in waking hours',
    (_, input) => {
      const layers = layersOf(input)
      layers.slice(1).forEach(({ startHour }, index) => {
        expect(startHour).toBeGreaterThanOrEqual(layers[index]?.readyHour ?? NaN)
        expect(startHour % 24).toBeGreaterThanOrEqual(7)
        expect(startHour % 24).toBeLessThanOrEqual(22)
      })
    },
  )

  it('RES-17 fewest layers: one fewer would pass the limit', () => {
    const { limit, layers } = heatOf(pourCase(100, settingAt(26)))
    expect(100 / (layers.length - 1)).toBeGreaterThan(limit.planMm)
  })

  it('RES-12 a warmer room never takes fewer layers', () => {
    const counts = [16, 20, 24, 28, 32, 36].map((roomC) => depthsOf(pourCase(80, settingAt(roomC))).length)
    expect(counts).toEqual([...counts].sort((a, b) => a - b))
    expect(counts.at(-1)).toBeGreaterThan(counts[0] ?? NaN)
  })

  it('RES-17 neither cold nor fans take a layer beyond the sheet, and the override says so', () => {
    const cold = pourCase(60, settingAt(15))
    expect(Math.max(...depthsOf(cold))).toBeLessThanOrEqual(45)
    const plan = pourPlan({ ...cold, sheet: { ...cold.sheet, greatestMassKg: null }, beyondSheet: true })
    expect(plan.heat?.layers).toHaveLength(1)
    expect(plan.notices.map(({ code }) => code)).toContain('beyond-sheet')
  })

  it('RES-17 a layer set by hand stays and the rest follows, with a warning where it is too deep', () => {
    const plan = pourPlan({ ...unweighed(90), layers: [hand(55)] })
    const [first, ...rest] = plan.heat?.layers ?? []
    expect(first).toMatchObject({ depthMm: 55, isByHand: true })
    expect(rest.map(({ depthMm }) => depthMm)).toEqual([35])
    const codes = plan.notices.filter(({ values }) => values['layer'] === 1).map(({ code }) => code)
    expect(codes).toContain('layer-deeper-than-limit')
    expect(codes).toContain('beyond-sheet')
  })

  it('RES-18 a start set by hand is kept, of the first layer too, and the rest follows', () => {
    const layers = layersOf({ ...pourCase(54, settingAt(24)), layers: [hand(null, 10), hand(null, 100)] })
    expect(layers.map(({ startHour }) => startHour)).toEqual([10, 100])
    expect(layers.every(({ depthMm, isByHand }) => depthMm === 27 && !isByHand)).toBe(true)
  })

  it('RES-8 a second layer poured on a hot first one warns', () => {
    const plan = pourPlan({ ...pourCase(100, settingAt(21)), layers: [hand(50), hand(50, 23)] })
    const about2 = plan.notices.filter(({ values }) => values['layer'] === 2).map(({ code }) => code)
    expect(about2).toContain('layer-runs-hot')
    expect(about2).toContain('poured-on-hot-layer')
    expect(plan.heat?.layers[1]?.corePeakC).toBeGreaterThan(100)
  })

  it('RES-18 the narrowest gap sets the next pour, the demoulding and the flattening', () => {
    const wide = pourCase(54, settingAt(21))
    const onlyRiver = { ...wide, gaps: wide.gaps.slice(0, 1) }
    expect(layersOf(wide)[0]?.narrowestName).toBe('far edge')
    expect(layersOf(wide)[0]?.gelHour).toBeGreaterThan(layersOf(onlyRiver)[0]?.gelHour ?? NaN)
    expect(heatOf(wide).flattenHour).toBeGreaterThan(heatOf(onlyRiver).flattenHour ?? NaN)
  })

  it('RES-17 the widest gap sets the depth', () => {
    const input = { ...pourCase(54, settingAt(30)), beyondSheet: true }
    const onlyEdge = { ...input, gaps: input.gaps.slice(1) }
    expect(heatOf(onlyEdge).limit.planMm).toBeGreaterThan(heatOf(input).limit.planMm)
  })

  it('RES-17 a slightly thinner cast that saves a whole pour is named, and it does', () => {
    const { thinner, layers } = heatOf(unweighed(47))
    expect(layers).toHaveLength(2)
    expect(thinner).toEqual({ castDepthMm: 45, thinnerByMm: 2, layers: 1 })
    expect(depthsOf(unweighed(thinner?.castDepthMm ?? NaN))).toHaveLength(1)
    expect(heatOf({ ...unweighed(47), leastCastDepthMm: 46 }).thinner).toBeNull()
    expect(heatOf(unweighed(80)).thinner).toBeNull()
  })

  it('RES-17 where the greatest mass calls for the second pour, the thinner cast is light enough too', () => {
    const weighed = pourCase(45, settingAt(21))
    const { thinner, layers } = heatOf(weighed)
    expect(layers).toHaveLength(2)
    expect(thinner?.castDepthMm).toBeLessThan(45)
    const [only] = layersOf({ ...weighed, ...pourCase(thinner?.castDepthMm ?? NaN, settingAt(21)) })
    expect(only?.need.massKg).toBeLessThanOrEqual(20)
  })

  it('RES-12 the chart’s band holds the usual line, and its profiles the depth of all layers', () => {
    const { chart } = heatOf(pourCase(54, settingAt(28)))
    chart.coreC.forEach((core, index) => {
      expect(chart.coreLeastC[index]).toBeLessThanOrEqual(core)
      expect(chart.coreGreatestC[index]).toBeGreaterThanOrEqual(core)
      expect(chart.surfaceC[index]).toBeLessThanOrEqual(core + 1e-9)
    })
    expect(chart.hours).toEqual([...chart.hours].sort((a, b) => a - b))
    const last = chart.profiles.at(-1)?.heightsMm.at(-1) ?? NaN
    expect(last).toBeGreaterThan(52)
    expect(last).toBeLessThan(54)
  })

  it('RES-6 where the room swings, a cooler hour to pour is found', () => {
    const room = { kind: 'swing', meanC: 24, swingC: 5, warmestHour: 15 } as const
    const plan = pourPlan(pourCase(54, { ...settingAt(24), room }))
    expect(plan.heat?.startHours.length).toBeGreaterThan(3)
    const named = plan.notices.find(({ code }) => code === 'start-cooler-hour')
    expect(named?.values['betterCoreC']).toBeLessThan(Number(named?.values['coreC']) - 5)
    expect(heatOf(pourCase(40, settingAt(24))).startHours).toEqual([])
  })

  it('RES-3 litres measured on the dry fit replace the computed ones in every layer', () => {
    const input = pourCase(54, settingAt(21))
    const plan = pourPlan({ ...input, measuredLitres: 30 })
    expect(plan.need?.gapLitres).toBe(30)
    const sum = plan.heat?.layers.reduce((litres, { need }) => litres + need.gapLitres, 0)
    expect(sum).toBeCloseTo(30, 9)
  })

  it('RES-20 packs cover the need with its margin, less what is on the shelf', () => {
    const input = pourCase(54, settingAt(21))
    const need = pourPlan(input).need?.mixLitres ?? NaN
    expect(pourPlan(input).packs?.litres).toBeGreaterThanOrEqual(need * 1.05)
    expect(pourPlan({ ...input, haveLitres: 20 }).packs?.litres).toBe(6)
    expect(pourPlan({ ...input, haveLitres: 40 }).packs).toMatchObject({ packs: [], costCents: 0 })
  })

  it('RES-17 no layer is heavier than the sheet’s greatest pour', () => {
    const input = pourCase(45, settingAt(21))
    const light = { ...input, sheet: { ...input.sheet, greatestMassKg: 7 } }
    for (const { need } of layersOf(light)) expect(need.massKg).toBeLessThanOrEqual(7.5)
    expect(layersOf(light).length).toBeGreaterThan(layersOf(input).length)
  })

  it('RES-11 a fit made earlier gives the same plan', () => {
    const input = pourCase(54, settingAt(25))
    const density = pourPlan(input).shares.mixedDensityKgPerM3
    expect(pourPlan(input, fitSheet(input.sheet, density))).toEqual(pourPlan(input))
  })
})

describe('bad input', () => {
  const input = pourCase(54, settingAt(21))

  it('RES-9 a ratio of nought blocks the mix; litres, layers and heat are given', () => {
    const plan = pourPlan({ ...input, sheet: { ...input.sheet, ratioByVolume: { resin: 0, hardener: 1 } } })
    expect(plan.notices.map(({ code }) => code)).toContain('ratio-not-positive')
    expect(plan.need?.mixLitres).toBeGreaterThan(20)
    expect(plan.need?.parts).toMatchObject({ resinLitres: null, resinKg: null })
    expect(plan.heat?.layers).toHaveLength(2)
  })

  it('RES-9 a sheet without a usable depth blocks the heat; litres, packs and uplift are given', () => {
    const plan = pourPlan({ ...input, sheet: { ...input.sheet, deepestLayerMm: 0 } })
    expect(plan.heat).toBeNull()
    expect(plan.need?.mixLitres).toBeGreaterThan(20)
    expect(plan.packs?.litres).toBeGreaterThan(20)
    expect(plan.holdDown[0]?.holdN).toBeGreaterThan(0)
  })

  it('RES-9 a room as hot as the limit gives no layers and says so', () => {
    for (const hot of [pourCase(54, settingAt(68)), { ...input, resinC: 80 }]) {
      const plan = pourPlan(hot)
      expect(plan.heat).toBeNull()
      expect(plan.notices.map(({ code }) => code)).toContain('room-too-hot')
      expect(plan.need?.mixLitres).toBeGreaterThan(20)
    }
  })

  it('RES-9 without gaps there is no need; one that is unusable is left out by name', () => {
    expect(pourPlan({ ...input, gaps: [] })).toMatchObject({ need: null, heat: null, packs: null })
    const [river] = input.gaps
    if (river === undefined) throw new Error('gap')
    const plan = pourPlan({ ...input, gaps: [river, { name: 'bad', kind: 'void', sections: [] }] })
    expect(plan.notices.find(({ code }) => code === 'gap-figure-unusable')?.values).toEqual({
      gapName: 'bad',
    })
    expect(plan.need?.gapLitres).toBeCloseTo(17.28, 9)
  })

  it('RES-9 no single figure that cannot be makes the plan throw', () => {
    const numbers = [
      'castDepthMm',
      'lossFraction',
      'firstStartHour',
      'handlingMinutes',
      'packMarginFraction',
      'haveLitres',
    ]
    const sheetNumbers = Object.entries(input.sheet).filter(([, value]) => typeof value === 'number')
    for (const value of [NaN, -1, 0, Infinity]) {
      for (const name of numbers) expect(() => pourPlan({ ...input, [name]: value })).not.toThrow()
      for (const [name] of sheetNumbers)
        expect(() => pourPlan({ ...input, sheet: { ...input.sheet, [name]: value } })).not.toThrow()
      for (const layers of [[hand(value)], [hand(null), hand(null, value)]])
        expect(() => pourPlan({ ...input, layers })).not.toThrow()
    }
  })
})
