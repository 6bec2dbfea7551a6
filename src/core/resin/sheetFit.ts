import { findRoot } from './findRoot'
import { pourPeak, type PourPeak } from './pourPeak'
import type { PourSetting } from './pourSetting'
import type { ProductSheet } from './productSheet'
import {
  GENERIC_CHEMISTRY,
  GREATEST_ACTIVATION_ENERGY_J_PER_MOL,
  LEAST_ACTIVATION_ENERGY_J_PER_MOL,
  type ResinChemistry,
} from './resinChemistry'

/** A chemistry that explains the sheet, and the limit that follows from it. */
export interface FittedResin {
  readonly chemistry: ResinChemistry
  /** The core peak that the fit implies at the sheet's own limit: what every plan is held to. */
  readonly coreLimitC: number
  /** Peak of the sheet's own test pour. */
  readonly sheetPeak: PourPeak
}

/** The fit with the usual activation energy and with both ends of its band. */
export interface SheetFit {
  readonly nominal: FittedResin
  readonly low: FittedResin
  readonly high: FittedResin
  /** False where no rate explains the sheet and the nearest one is used. */
  readonly isExact: boolean
}

/** The wood beside a sheet's own test, where its width is stated: basic gravity 0.55 at 10 % moisture. */
export const USUAL_WOOD_W_PER_MK = 0.15

const LEAST_RATE_LOG = Math.log(1e-9)
const GREATEST_RATE_LOG = Math.log(1)
const LEAST_START_SHARE_LOG = Math.log(0.02)
const GREATEST_START_SHARE_LOG = Math.log(20)

/** The rate that the usual slow resin has; only where the search begins. */
const USUAL_RATE_PER_S = 5.8e-6
const USUAL_DEEPEST_MM = 50

export const sheetSetting = (sheet: ProductSheet): PourSetting => ({
  room: { kind: 'steady', roomC: sheet.referenceC },
  air: 'still',
  beneath: 'board-on-bench',
  woodWPerMK: USUAL_WOOD_W_PER_MK,
})

const sheetPourPeak = (sheet: ProductSheet, chemistry: ResinChemistry): PourPeak =>
  pourPeak(chemistry, {
    layer: { depthMm: sheet.deepestLayerMm, widthMm: sheet.testWidthMm, resinC: sheet.referenceC },
    setting: sheetSetting(sheet),
    startHour: 0,
  })

/**
 * Fits the rate constant to a sheet: the deepest layer at the reference temperature just reaches the allowed
 * surface peak in still air.
 * @param sheet  without blockers (sheetNotices)
 * @returns the fit for the usual activation energy and for both ends of its band
 * Method: root of ln(surface rise / allowed rise) over ln K, each value one simulation; where the sheet gives the hour
 * of the peak, the start share is found too, by a second root around the first.
 * Rules: RES-11.
 */
export function fitSheet(sheet: ProductSheet, densityKgPerM3: number | null): SheetFit {
  const fit = (activationEnergyJPerMol: number): OneFit =>
    fitOne(sheet, {
      ...GENERIC_CHEMISTRY,
      densityKgPerM3: densityKgPerM3 ?? GENERIC_CHEMISTRY.densityKgPerM3,
      activationEnergyJPerMol,
      referenceRatePerS: USUAL_RATE_PER_S * (USUAL_DEEPEST_MM / sheet.deepestLayerMm) ** 1.5,
      referenceC: sheet.referenceC,
    })
  const nominal = fit(GENERIC_CHEMISTRY.activationEnergyJPerMol)
  const low = fit(LEAST_ACTIVATION_ENERGY_J_PER_MOL)
  const high = fit(GREATEST_ACTIVATION_ENERGY_J_PER_MOL)
  return {
    nominal: nominal.resin,
    low: low.resin,
    high: high.resin,
    isExact: nominal.isExact && low.isExact && high.isExact,
  }
}

interface OneFit {
  readonly resin: FittedResin
  readonly isExact: boolean
}

function fitOne(sheet: ProductSheet, start: ResinChemistry): OneFit {
  const rated = fitRate(sheet, start)
  if (sheet.peakHours === null || rated === null) return fitOf(sheet, rated, start)
  const wantedHours = sheet.peakHours
  // A greater share at the start needs a lower rate for the same peak, and moves the peak earlier.
  let latest = rated
  const shareLog = findRoot(
    (log) => {
      latest = fitRate(sheet, { ...latest, startShare: Math.exp(log) }) ?? latest
      return Math.log(wantedHours / sheetPourPeak(sheet, latest).surfaceHours)
    },
    {
      guess: Math.log(rated.startShare),
      step: 0.4,
      least: LEAST_START_SHARE_LOG,
      greatest: GREATEST_START_SHARE_LOG,
      tolerance: 0.01,
    },
  )
  if (shareLog === null) return { ...fitOf(sheet, rated, start), isExact: false }
  return fitOf(sheet, fitRate(sheet, { ...latest, startShare: Math.exp(shareLog) }), rated)
}

function fitOf(sheet: ProductSheet, found: ResinChemistry | null, otherwise: ResinChemistry): OneFit {
  const chemistry = found ?? otherwise
  const sheetPeak = sheetPourPeak(sheet, chemistry)
  return { resin: { chemistry, sheetPeak, coreLimitC: sheetPeak.coreC }, isExact: found !== null }
}

function fitRate(sheet: ProductSheet, start: ResinChemistry): ResinChemistry | null {
  const { referenceC } = sheet
  const allowed = Math.log(sheet.surfacePeakLimitC - referenceC)
  const at = (log: number): ResinChemistry => ({ ...start, referenceRatePerS: Math.exp(log) })
  const log = findRoot(
    (x) => Math.log(Math.max(1e-9, sheetPourPeak(sheet, at(x)).surfaceC - referenceC)) - allowed,
    {
      guess: Math.log(start.referenceRatePerS),
      step: 0.1,
      least: LEAST_RATE_LOG,
      greatest: GREATEST_RATE_LOG,
      tolerance: 2e-3,
    },
  )
  return log === null ? null : at(log)
}
