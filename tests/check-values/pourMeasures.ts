import {
  bucketHeat,
  deepestLayer,
  EXAMPLE_SHEETS,
  fitSheet,
  pourPeak,
  type SheetFit,
} from '../../src/core/resin'
import { LayerStack } from '../../src/core/resin/layerStack'
import { followPour } from '../../src/core/resin/readingActions'
import type { PourSetting } from '../../src/core/resin'
import { number, type Inputs } from './heatMeasures'

/** The sheet that every figure of pour-by-pour rows is fitted to: 50 mm at 21 °C with 49 °C on top. */
let kept: SheetFit | null = null
export const sheetFit = (): SheetFit => (kept ??= fitSheet(EXAMPLE_SHEETS.slowCasting, 1100))

/** The prototype's wood beside the gap: basic gravity 0.6 at 10 % or so; ±20 % in any case. */
const WOOD_W_PER_MK = 0.16

const chemistryOf = (inputs: Inputs) => {
  const fit = sheetFit()
  if (inputs['energy'] === 'low') return fit.low
  return inputs['energy'] === 'high' ? fit.high : fit.nominal
}

const settingOf = (inputs: Inputs): PourSetting => {
  const roomC = number(inputs, 'roomC')
  const swingC = inputs['swingC']
  return {
    room:
      typeof swingC === 'number'
        ? { kind: 'swing', meanC: roomC, swingC, warmestHour: 15 }
        : { kind: 'steady', roomC },
    air: inputs['air'] === 'fans' ? 'fans' : 'still',
    beneath: 'board-on-bench',
    woodWPerMK: WOOD_W_PER_MK,
  }
}

const widthOf = (inputs: Inputs): number | null =>
  typeof inputs['widthMm'] === 'number' ? inputs['widthMm'] : null

/** One figure of the peak of a single pour. */
export function pourFigure(inputs: Inputs): number {
  const setting = settingOf(inputs)
  const startHour = typeof inputs['startHour'] === 'number' ? inputs['startHour'] : 0
  const roomC = number(inputs, 'roomC')
  const swing = setting.room.kind === 'swing' ? setting.room : null
  const here = swing === null ? roomC : roomC + swing.swingC * Math.cos((Math.PI * (startHour - 15)) / 12)
  const peak = pourPeak(chemistryOf(inputs).chemistry, {
    layer: {
      depthMm: number(inputs, 'depthMm'),
      widthMm: widthOf(inputs),
      resinC: typeof inputs['resinC'] === 'number' ? inputs['resinC'] : here,
    },
    setting,
    startHour,
  })
  const figures: Readonly<Record<string, number>> = {
    core: peak.coreC,
    surface: peak.surfaceC,
    hours: peak.coreHours,
  }
  return figures[String(inputs['figure'])] ?? NaN
}

/** Deepest layer of a wide gap, mm, and its hour of peak or its surface reading at the limit. */
export function deepest(inputs: Inputs): number {
  const roomC = number(inputs, 'roomC')
  const fit = sheetFit()
  const one = chemistryOf(inputs)
  const found = deepestLayer(
    { ...fit, nominal: one },
    { setting: settingOf(inputs), startHour: 0, resinC: roomC, widthMm: null },
    EXAMPLE_SHEETS.slowCasting.deepestLayerMm,
  )
  const figures: Readonly<Record<string, number | undefined>> = {
    depth: found.depthMm,
    hours: found.peak?.coreHours,
    surface: found.peak?.surfaceC,
  }
  return figures[String(inputs['figure'])] ?? NaN
}

/** Core of a second layer poured so many hours after the first, or the first's surface at that moment. */
export function secondLayer(inputs: Inputs): number {
  const { chemistry } = sheetFit().nominal
  const stack = new LayerStack(chemistry, settingOf(inputs), 0)
  const layer = { depthMm: number(inputs, 'depthMm'), widthMm: null, resinC: number(inputs, 'roomC') }
  stack.pour(layer)
  stack.runUntil(number(inputs, 'waitHours'))
  if (inputs['figure'] === 'below') return stack.moment().surfaceC
  stack.pour(layer)
  let core = -Infinity
  stack.runUntil(number(inputs, 'waitHours') + 60, (moment) => {
    core = Math.max(core, moment.coreC)
    return false
  })
  return core
}

/** Hour at which the surface of one layer has set. */
export function gelHours(inputs: Inputs): number {
  const { chemistry } = sheetFit().nominal
  const stack = new LayerStack(chemistry, settingOf(inputs), 0)
  stack.pour({ depthMm: number(inputs, 'depthMm'), widthMm: null, resinC: number(inputs, 'roomC') })
  stack.runUntil(500, ({ surfaceDegree }) => surfaceDegree >= chemistry.gelDegree)
  return stack.hour
}

/** Hour at which the surface shows a reading, or the core at that moment. */
export function atReading(inputs: Inputs): number {
  const roomC = number(inputs, 'roomC')
  const moments = followPour(
    sheetFit().nominal,
    { setting: settingOf(inputs), startHour: 0, resinC: roomC, widthMm: null },
    number(inputs, 'depthMm'),
  )
  const after = moments.findIndex(({ surfaceC }) => surfaceC >= number(inputs, 'surfaceC'))
  const [before, then] = [moments[after - 1], moments[after]]
  if (before === undefined || then === undefined) return NaN
  const share = (number(inputs, 'surfaceC') - before.surfaceC) / (then.surfaceC - before.surfaceC)
  return inputs['figure'] === 'core'
    ? before.coreC + share * (then.coreC - before.coreC)
    : before.hour + share * (then.hour - before.hour)
}

/** A figure of a bucket left standing. */
export function bucket(inputs: Inputs): number {
  const roomC = number(inputs, 'roomC')
  const massKg = inputs['massKg'] === 'endless' ? Infinity : number(inputs, 'massKg')
  const heat = bucketHeat(sheetFit().nominal.chemistry, massKg, roomC, roomC)
  const figures: Readonly<Record<string, number | null>> = {
    plus5: heat.plus5Hours,
    plus10: heat.plus10Hours,
    to60: heat.reaches60Hours,
    peak: heat.peakC,
  }
  return figures[String(inputs['figure'])] ?? NaN
}
