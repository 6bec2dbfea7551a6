import { findRoot } from './findRoot'
import { notice, type ResinNotice } from './notice'
import { pourPeak, type PourPeak } from './pourPeak'
import type { PourSetting } from './pourSetting'
import type { ResinChemistry } from './resinChemistry'
import type { FittedResin, SheetFit } from './sheetFit'

/** A pour that was really made, as the maker wrote it down. */
export interface LoggedPour {
  readonly name: string
  readonly depthMm: number
  /** Null: a wide gap. */
  readonly widthMm: number | null
  readonly roomC: number
  readonly resinC: number
  readonly air: PourSetting['air']
  readonly surfacePeakC: number
  /** Hours from the pour to the peak; null: not seen. */
  readonly peakHours: number | null
}

/** A logged pour against what the model gives for it. */
export interface LoggedAgainstPlan {
  readonly name: string
  readonly loggedC: number
  readonly beforeC: number
  /** After the refit; null without one. */
  readonly afterC: number | null
  readonly loggedHours: number | null
  readonly beforeHours: number
  readonly afterHours: number | null
}

export interface LogRefit {
  /** The refitted chemistry with the sheet's own core limit; null: the sheet's fit stays. */
  readonly fit: SheetFit | null
  readonly pours: readonly LoggedAgainstPlan[]
  readonly notices: readonly ResinNotice[]
}

export const LEAST_LOGGED_POURS = 3
/** A rise that is lower than that of a milder pour by more than reading errors. */
const CONTRADICTION_SHARE = 0.8
const CONTRADICTION_K = 2
/** Typical factor between logged and computed rise above which the log is called scattered. */
const SCATTER_FACTOR = 1.35
const LEAST_RISE_K = 0.5

type Place = Omit<PourSetting, 'room' | 'air'>

/**
 * Fits the rate to pours that were really made.
 * @param pours  three usable ones at least, none against another; else the sheet's fit stays and the notices say why
 * @returns the refit; its core limit stays that of the sheet, so it never allows a core that the sheet does not
 * Method: root of the mean of ln(computed rise / logged rise) over ln K; with three hours of peak, the start share too,
 * by the root of the mean of ln(logged hours / computed hours).
 * Rules: RES-22.
 */
export function refitFromLog(
  fit: SheetFit,
  pours: readonly LoggedPour[],
  place: Place,
  surfacePeakLimitC: number,
): LogRefit {
  const usable = pours.filter(isUsable)
  const notices = logNotices(pours, usable, surfacePeakLimitC)
  const before = usable.map((pour) => peakOf(fit.nominal.chemistry, pour, place))
  const isBlocked = notices.some(({ severity }) => severity === 'blocker')
  const refit = isBlocked ? null : refitAll(fit, usable, place)
  const after = refit === null ? null : usable.map((pour) => peakOf(refit.nominal.chemistry, pour, place))
  return {
    fit: refit,
    pours: usable.map((pour, index) => against(pour, before[index], after?.[index])),
    notices: [...notices, ...scatterNotices(usable, after)],
  }
}

const against = (
  pour: LoggedPour,
  before: PourPeak | undefined,
  after: PourPeak | undefined,
): LoggedAgainstPlan => ({
  name: pour.name,
  loggedC: pour.surfacePeakC,
  beforeC: before?.surfaceC ?? NaN,
  afterC: after?.surfaceC ?? null,
  loggedHours: pour.peakHours,
  beforeHours: before?.surfaceHours ?? NaN,
  afterHours: after?.surfaceHours ?? null,
})

const isWithin = (value: number | null, least: number, greatest: number): boolean =>
  value === null || (value > least && value < greatest)

const isUsable = ({ depthMm, widthMm, roomC, resinC, surfacePeakC, peakHours }: LoggedPour): boolean =>
  isWithin(depthMm, 0, 1000) &&
  isWithin(widthMm, 0, 20_000) &&
  isWithin(roomC, -20, 60) &&
  isWithin(resinC, -20, 80) &&
  isWithin(surfacePeakC, roomC + LEAST_RISE_K, 300) &&
  isWithin(peakHours, 0, 1000)

function logNotices(
  pours: readonly LoggedPour[],
  usable: readonly LoggedPour[],
  surfacePeakLimitC: number,
): readonly ResinNotice[] {
  const bad = pours.filter((pour) => !isUsable(pour))
  const hot = usable.filter(({ surfacePeakC }) => surfacePeakC > surfacePeakLimitC)
  const short = { pours: usable.length, leastPours: LEAST_LOGGED_POURS }
  return [
    ...bad.map(({ name }) => notice('log-entry-unusable', 'warning', { entryName: name })),
    ...(usable.length < LEAST_LOGGED_POURS ? [notice('log-too-short', 'blocker', short)] : []),
    ...contradictions(usable).map(([first, second]) =>
      notice('log-contradicts-itself', 'blocker', { firstName: first.name, secondName: second.name }),
    ),
    ...hot.map(({ name, surfacePeakC }) =>
      notice('log-hotter-than-sheet', 'warning', {
        entryName: name,
        surfaceC: surfacePeakC,
        limitC: surfacePeakLimitC,
      }),
    ),
  ]
}

/** Pairs where the pour that must be the hotter one, whatever the chemistry, was clearly the cooler. */
function contradictions(pours: readonly LoggedPour[]): readonly (readonly [LoggedPour, LoggedPour])[] {
  return pours.flatMap((harder) =>
    pours
      .filter(
        (milder) =>
          milder !== harder &&
          isHarder(harder, milder) &&
          harder.surfacePeakC - harder.roomC <
            CONTRADICTION_SHARE * (milder.surfacePeakC - milder.roomC) - CONTRADICTION_K,
      )
      .map((milder) => [harder, milder] as const),
  )
}

const isHarder = (one: LoggedPour, other: LoggedPour): boolean =>
  one.depthMm >= other.depthMm &&
  (one.widthMm ?? Infinity) >= (other.widthMm ?? Infinity) &&
  one.roomC >= other.roomC &&
  one.resinC - one.roomC >= other.resinC - other.roomC &&
  (one.air === other.air || one.air === 'still')

const peakOf = (chemistry: ResinChemistry, pour: LoggedPour, place: Place): PourPeak =>
  pourPeak(chemistry, {
    layer: { depthMm: pour.depthMm, widthMm: pour.widthMm, resinC: pour.resinC },
    setting: { ...place, air: pour.air, room: { kind: 'steady', roomC: pour.roomC } },
    startHour: 0,
  })

function refitAll(fit: SheetFit, pours: readonly LoggedPour[], place: Place): SheetFit | null {
  const [nominal, low, high] = [fit.nominal, fit.low, fit.high].map((resin) => refitOne(resin, pours, place))
  return nominal && low && high ? { nominal, low, high, isExact: true } : null
}

function refitOne(resin: FittedResin, pours: readonly LoggedPour[], place: Place): FittedResin | null {
  const timed = pours.filter(({ peakHours }) => peakHours !== null)
  const rated = refitRate(resin.chemistry, pours, place)
  if (rated === null || timed.length < LEAST_LOGGED_POURS) return rated && { ...resin, chemistry: rated }
  let latest = rated
  const shareLog = findRoot(
    (log) => {
      latest = refitRate({ ...latest, startShare: Math.exp(log) }, pours, place) ?? latest
      return meanOf(timed, (pour) =>
        Math.log((pour.peakHours ?? 1) / Math.max(1e-3, peakOf(latest, pour, place).surfaceHours)),
      )
    },
    {
      guess: Math.log(rated.startShare),
      step: 0.3,
      least: Math.log(0.02),
      greatest: Math.log(20),
      tolerance: 0.02,
    },
  )
  // Hours that no start share explains leave the rate alone to be fitted.
  const timedFit =
    shareLog === null ? null : refitRate({ ...latest, startShare: Math.exp(shareLog) }, pours, place)
  return { ...resin, chemistry: timedFit ?? rated }
}

function refitRate(start: ResinChemistry, pours: readonly LoggedPour[], place: Place): ResinChemistry | null {
  const at = (log: number): ResinChemistry => ({ ...start, referenceRatePerS: Math.exp(log) })
  const log = findRoot(
    (x) =>
      meanOf(pours, (pour) => {
        const riseK = Math.max(1e-6, peakOf(at(x), pour, place).surfaceC - pour.roomC)
        return Math.log(riseK / (pour.surfacePeakC - pour.roomC))
      }),
    { guess: Math.log(start.referenceRatePerS), step: 0.1, least: -21, greatest: 0, tolerance: 3e-3 },
  )
  return log === null ? null : at(log)
}

const meanOf = (pours: readonly LoggedPour[], of: (pour: LoggedPour) => number): number =>
  pours.reduce((sum, pour) => sum + of(pour), 0) / pours.length

function scatterNotices(
  pours: readonly LoggedPour[],
  after: readonly PourPeak[] | null,
): readonly ResinNotice[] {
  if (after === null) return []
  const squares = pours.map((pour, index) => {
    const computed = (after[index]?.surfaceC ?? pour.roomC) - pour.roomC
    return Math.log(Math.max(1e-6, computed) / (pour.surfacePeakC - pour.roomC)) ** 2
  })
  const factor = Math.exp(Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length))
  return factor > SCATTER_FACTOR ? [notice('log-scattered', 'warning', { factor })] : []
}
