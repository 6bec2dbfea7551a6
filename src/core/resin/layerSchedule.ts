import { CELLS_PER_LAYER, LayerStack } from './layerStack'
import type { PourSetting } from './pourSetting'
import { roomAtC, type RoomTemperature } from './roomTemperature'
import type { FittedResin, SheetFit } from './sheetFit'
import { StackTrace, type LayerPeak } from './stackTrace'
import { chooseStartHour, nextWakingHour, roundUpHalfHour, type WakingDay } from './wakingHours'

/** One layer as the heat model sees it: its hottest and its slowest gap. */
export interface ScheduledLayer {
  /** Depth that the hottest gap counts as. */
  readonly hotDepthMm: number
  readonly widestMm: number
  readonly slowDepthMm: number
  readonly narrowestMm: number
  /** Chosen by hand, hours from midnight before the first pour; null: as soon as it is good. */
  readonly startHour: number | null
}

export interface ScheduleCase {
  readonly fit: SheetFit
  readonly setting: PourSetting
  /** Null: the resin is as warm as the room when it is poured. */
  readonly resinC: number | null
  readonly firstStartHour: number
  readonly day: WakingDay
  readonly recoatLeastHours: number | null
  readonly recoatGreatestHours: number | null
  readonly demouldHours: number | null
  /** How long one pour takes. */
  readonly workHours: number
}

export interface LayerTiming {
  readonly startHour: number
  readonly peak: LayerPeak
  /** When the slowest gap has set at its surface; null: not before the next step. */
  readonly gelHour: number | null
  /** When the hottest gap is back near the room; null: not before the next step. */
  readonly coolHour: number | null
  /** From when the next layer may be poured. */
  readonly readyHour: number | null
  /** Until when it bonds without scuffing; null: the sheet does not say. */
  readonly windowEndHour: number | null
  /** Hottest place beneath at the moment of the pour; null for the first layer. */
  readonly belowC: number | null
  /** Whether the slowest gap beneath had not set when this layer was poured. */
  readonly belowIsSoft: boolean
}

export interface Schedule {
  readonly layers: readonly LayerTiming[]
  readonly demouldHour: number | null
  readonly flattenHour: number | null
  readonly trace: StackTrace
  readonly endHour: number
}

/** A surface counts as set a little past the gel point. */
const GEL_MARGIN = 0.03
/** The layer below counts as cool within so many kelvin of the room. */
export const COOL_WITHIN_K = 3
/** No source: hard enough to take out of the form, and to flatten. The sheet's hours rule where they are later. */
const DEMOULD_DEGREE = 0.75
const FLATTEN_DEGREE = 0.85
/** Longest that a layer is waited for. */
export const LONGEST_WAIT_HOURS = 504
/** How long the last layer is followed for the chart at least. */
const TAIL_HOURS = 36

/** Many thin layers do not need as many cells each; see the test of grid convergence. */
const cellsFor = (layers: number): number => {
  if (layers <= 3) return CELLS_PER_LAYER
  return layers <= 8 ? 12 : 6
}

const sumOrNull = (hour: number, hours: number | null): number | null =>
  hours === null ? null : hour + hours

/** The room a layer must come near to: by night the resin lags behind it, so not below the day's mean. */
const coolC = (room: RoomTemperature, hour: number): number =>
  COOL_WITHIN_K + Math.max(roomAtC(room, hour), room.kind === 'steady' ? room.roomC : room.meanC)

/**
 * Pours all layers in time, each as soon as it is good.
 * @returns timing of each layer, and the record of the hottest gap
 * Method: two stacks run side by side, the hottest and the slowest gap. The next layer waits until the slowest has
 * set, the hottest has cooled, and the sheet's least time is over; then it is moved to waking hours.
 * Rules: RES-8, RES-17, RES-18.
 */
export function scheduleLayers(wish: ScheduleCase, layers: readonly ScheduledLayer[]): Schedule {
  const { chemistry } = wish.fit.nominal
  const hot = new LayerStack(chemistry, wish.setting, wish.firstStartHour)
  const slow = new LayerStack(chemistry, wish.setting, wish.firstStartHour)
  const trace = new StackTrace(hot, true)
  const timings: Omit<LayerTiming, 'peak'>[] = []
  let startHour = wish.firstStartHour
  let soft = false
  layers.forEach((layer, index) => {
    const belowC = index === 0 ? null : hot.moment().coreC
    const resinC = wish.resinC ?? roomAtC(wish.setting.room, startHour)
    hot.pour({ depthMm: layer.hotDepthMm, widthMm: layer.widestMm, resinC }, cellsFor(layers.length))
    slow.pour({ depthMm: layer.slowDepthMm, widthMm: layer.narrowestMm, resinC }, cellsFor(layers.length))
    trace.beginLayer()
    const hand = handStart(layers[index + 1], startHour)
    const waited = waitForLayer(wish, { hot, slow, trace }, startHour, hand)
    timings.push({ startHour, belowC, belowIsSoft: soft, ...waited })
    soft = waited.gelHour === null
    if (index < layers.length - 1) {
      startHour = nextStart(wish, timings, hand, trace)
      hot.runUntil(startHour, (moment) => {
        trace.add(moment)
        return false
      })
      slow.runUntil(startHour)
    }
  })
  const finish = finishHours(wish, slow, startHour)
  const endHour = Math.max(hot.hour, startHour + TAIL_HOURS)
  hot.runUntil(endHour, (moment) => {
    trace.add(moment)
    return false
  })
  const peaks = trace.peaks
  return {
    layers: timings.flatMap((timing, index) => {
      const peak = peaks[index]
      return peak === undefined ? [] : [{ ...timing, peak }]
    }),
    ...finish,
    trace,
    endHour,
  }
}

/** A start by hand, never before the layer below it. */
const handStart = (layer: ScheduledLayer | undefined, afterHour: number): number | null =>
  layer === undefined || layer.startHour === null ? null : Math.max(layer.startHour, afterHour + 0.5)

interface Stacks {
  readonly hot: LayerStack
  readonly slow: LayerStack
  readonly trace: StackTrace
}

type Waited = Pick<LayerTiming, 'gelHour' | 'coolHour' | 'readyHour' | 'windowEndHour'>

function waitForLayer(wish: ScheduleCase, stacks: Stacks, startHour: number, hand: number | null): Waited {
  const { hot, slow, trace } = stacks
  const setDegree = wish.fit.nominal.chemistry.gelDegree + GEL_MARGIN
  const endHour = hand ?? startHour + LONGEST_WAIT_HOURS
  let hotGelHour: number | null = null
  let coolHour: number | null = null
  hot.runUntil(endHour, (moment) => {
    trace.add(moment)
    if (moment.surfaceDegree >= setDegree) hotGelHour ??= moment.hour
    if (hotGelHour !== null && moment.coreC <= coolC(wish.setting.room, moment.hour)) coolHour ??= moment.hour
    return coolHour !== null
  })
  let slowGelHour: number | null = null
  slow.runUntil(endHour, (moment) => {
    if (moment.surfaceDegree >= setDegree) slowGelHour ??= moment.hour
    return slowGelHour !== null
  })
  const gelHour = laterOf(hotGelHour, slowGelHour)
  const ready = laterOf(gelHour, coolHour)
  return {
    gelHour,
    coolHour,
    readyHour: ready === null ? null : Math.max(ready, startHour + (wish.recoatLeastHours ?? 0)),
    windowEndHour: sumOrNull(startHour, wish.recoatGreatestHours),
  }
}

const laterOf = (first: number | null, second: number | null): number | null =>
  first === null || second === null ? null : Math.max(first, second)

function nextStart(
  wish: ScheduleCase,
  timings: readonly Omit<LayerTiming, 'peak'>[],
  hand: number | null,
  trace: StackTrace,
): number {
  const last = timings.at(-1)
  const peak = trace.peaks.at(-1)
  if (hand !== null || last === undefined || peak === undefined) return hand ?? wish.firstStartHour
  return chooseStartHour({
    earliestHour: last.readyHour ?? last.startHour + LONGEST_WAIT_HOURS,
    latestHour: last.windowEndHour,
    day: wish.day,
    peakDelayHours: peak.coreHour - last.startHour,
    workHours: wish.workHours,
  })
}

function finishHours(
  wish: ScheduleCase,
  slow: LayerStack,
  startHour: number,
): Pick<Schedule, 'demouldHour' | 'flattenHour'> {
  let demouldHour: number | null = null
  let flattenHour: number | null = null
  slow.runUntil(startHour + LONGEST_WAIT_HOURS, (moment) => {
    if (moment.leastDegree >= DEMOULD_DEGREE) demouldHour ??= moment.hour
    if (moment.leastDegree >= FLATTEN_DEGREE) flattenHour ??= moment.hour
    return flattenHour !== null
  })
  const awake = (hour: number | null): number | null =>
    hour === null
      ? null
      : nextWakingHour(roundUpHalfHour(Math.max(hour, startHour + (wish.demouldHours ?? 0))), wish.day)
  return { demouldHour: awake(demouldHour), flattenHour: awake(flattenHour) }
}

/** The hottest gap once more, with another chemistry and the starts given. Rules: RES-12. */
export function traceLayers(
  resin: FittedResin,
  wish: ScheduleCase,
  layers: readonly ScheduledLayer[],
  startHours: readonly number[],
  endHour: number,
): StackTrace {
  const stack = new LayerStack(resin.chemistry, wish.setting, wish.firstStartHour)
  const trace = new StackTrace(stack, false)
  layers.forEach((layer, index) => {
    const startHour = startHours[index] ?? wish.firstStartHour
    const resinC = wish.resinC ?? roomAtC(wish.setting.room, startHour)
    stack.pour({ depthMm: layer.hotDepthMm, widthMm: layer.widestMm, resinC }, cellsFor(layers.length))
    trace.beginLayer()
    stack.runUntil(startHours[index + 1] ?? endHour, (moment) => {
      trace.add(moment)
      return false
    })
  })
  return trace
}
