/** Hours of the day between which the maker is about; hours count from midnight before the first pour. */
export interface WakingDay {
  readonly fromHour: number
  readonly toHour: number
}

export interface StartWish {
  readonly earliestHour: number
  /** End of the window in which the layer bonds without scuffing; null: none is known. */
  readonly latestHour: number | null
  readonly day: WakingDay
  /** Hours from the pour to its hottest moment, as expected. */
  readonly peakDelayHours: number
  /** How long the pour itself takes. */
  readonly workHours: number
}

const STEP_HOURS = 0.5
/** How far past the earliest hour a start is looked for when no window is known. */
const LOOK_AHEAD_HOURS = 24

/** Times are given to the half hour, later rather than sooner. */
export const roundUpHalfHour = (hour: number): number => Math.ceil(hour / STEP_HOURS - 1e-9) * STEP_HOURS

export function isAwake(hour: number, day: WakingDay): boolean {
  if (!(day.toHour > day.fromHour)) return true
  const ofDay = ((hour % 24) + 24) % 24
  return ofDay >= day.fromHour && ofDay <= day.toHour
}

/** @returns the hour itself, or the next waking one */
export function nextWakingHour(hour: number, day: WakingDay): number {
  if (isAwake(hour, day)) return hour
  const midnight = Math.floor(hour / 24) * 24
  return midnight + day.fromHour + (hour - midnight > day.fromHour ? 24 : 0)
}

/**
 * When to pour the next layer.
 * @returns the first half hour within the window at which the maker is about from start to finish and at the expected
 * peak; else one without the peak; else the first waking hour after the window
 * Rules: RES-18.
 */
export function chooseStartHour(wish: StartWish): number {
  const { day } = wish
  const first = roundUpHalfHour(wish.earliestHour)
  const last = Math.max(first, wish.latestHour ?? first + LOOK_AHEAD_HOURS)
  const candidates = Array.from(
    { length: Math.floor((last - first) / STEP_HOURS) + 1 },
    (_, index) => first + index * STEP_HOURS,
  ).filter((hour) => isAwake(hour, day) && isAwake(hour + wish.workHours, day))
  const withPeak = candidates.find((hour) => isAwake(hour + wish.peakDelayHours, day))
  return withPeak ?? candidates[0] ?? nextWakingHour(first, day)
}
