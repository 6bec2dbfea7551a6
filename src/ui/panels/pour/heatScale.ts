import type { HeatChart, TimedProfile } from '../../../core/resin'

/** Where hours and degrees of the chart lie in its box. */
export interface HeatScale {
  readonly fromHour: number
  readonly toHour: number
  readonly leastC: number
  readonly greatestC: number
  readonly x: (hour: number) => number
  readonly y: (celsius: number) => number
}

export interface ChartBox {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

const STEP_C = 10
/** Room above the room's temperature, so that a flat pour is not drawn as a mountain. */
const LEAST_SPAN_C = 30
/** A limit farther above than this would flatten the lines. */
const NEAR_K = 25

/** Hours from the first pour to the end; degrees in whole tens, the core's limit in view when it is near. */
export function heatScale(chart: HeatChart, limitC: number | null, box: ChartBox): HeatScale {
  const hottest = Math.max(...chart.coreGreatestC)
  const coolest = Math.min(...chart.surfaceC, ...chart.coreLeastC)
  const leastC = Math.floor((coolest - 2) / STEP_C) * STEP_C
  const isNear = limitC !== null && limitC - hottest < NEAR_K
  const wanted = Math.max(hottest + 3, isNear ? limitC + 5 : 0)
  const greatestC = Math.max(leastC + LEAST_SPAN_C, Math.ceil(wanted / STEP_C) * STEP_C)
  const fromHour = chart.hours[0] ?? 0
  const toHour = Math.max(fromHour + 1, chart.hours.at(-1) ?? 0)
  return {
    fromHour,
    toHour,
    leastC,
    greatestC,
    x: (hour) => box.left + ((hour - fromHour) / (toHour - fromHour)) * box.width,
    y: (celsius) => box.top + ((greatestC - celsius) / (greatestC - leastC)) * box.height,
  }
}

/** Midnights, or every so many hours where there are too few or too many of them. */
export function hourTicks({ fromHour, toHour }: HeatScale): readonly number[] {
  const span = toHour - fromHour
  const step = [3, 6, 12, 24, 48, 96].find((hours) => span / hours <= 8) ?? 168
  const first = Math.ceil(fromHour / step) * step
  return Array.from({ length: Math.floor((toHour - first) / step) + 1 }, (_, index) => first + index * step)
}

export const degreeTicks = ({ leastC, greatestC }: HeatScale): readonly number[] => {
  const step = greatestC - leastC > 80 ? 2 * STEP_C : STEP_C
  return Array.from(
    { length: Math.floor((greatestC - leastC) / step) + 1 },
    (_, index) => leastC + index * step,
  )
}

/**
 * Temperature of a profile at a height, for the map.
 * @returns °C; null above the resin that is poured by then
 */
export function temperatureAt(profile: TimedProfile, heightMm: number): number | null {
  const cells = profile.heightsMm.map((height, k) => [height, profile.temperaturesC[k] ?? NaN] as const)
  const above = cells.findIndex(([height]) => height >= heightMm)
  const [low, high] = [cells.at(above - 1), cells.at(above)]
  if (low === undefined || high === undefined) return null
  // Within half a cell of the floor or the surface: as in that cell.
  if (above === 0) return high[1]
  if (above === -1) return heightMm <= high[0] + (cells[0]?.[0] ?? 0) ? high[1] : null
  return low[1] + ((heightMm - low[0]) / (high[0] - low[0])) * (high[1] - low[1])
}

/** The last profile at or before an hour; profiles are in order of time. */
export function profileAt(profiles: readonly TimedProfile[], hour: number): TimedProfile | undefined {
  let [low, high] = [0, profiles.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((profiles[middle]?.hour ?? Infinity) <= hour) low = middle + 1
    else high = middle
  }
  return profiles[Math.max(0, low - 1)]
}
