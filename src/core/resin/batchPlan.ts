import { bucketDegree, bucketHoursToDegree, bucketHoursToWarm } from './bucketHeat'
import { mixParts, type MixParts, type MixShares } from './mixShares'
import type { ProductSheet } from './productSheet'
import { GENERIC_CHEMISTRY, type ResinChemistry } from './resinChemistry'

export type Dye =
  | { readonly kind: 'grams'; readonly gramsPerLitre: number }
  | { readonly kind: 'drops'; readonly dropsPerLitre: number; readonly gramsPerDrop: number }

/** Equal batches of one layer: one after the other through the same bucket. */
export interface BatchPlan {
  readonly count: number
  readonly litresEach: number
  readonly kgEach: number | null
  readonly partsEach: MixParts
  readonly dye: BatchDye | null
  /** Working time of such a batch here, minutes; null: the sheet states none. */
  readonly workingMinutes: number | null
  /** When a full bucket left standing is 5 K warmer, minutes; null: it never is. */
  readonly plus5Minutes: number | null
  /** False where even small batches do not last as long as the handling takes. */
  readonly isInTime: boolean
}

export interface BatchDye {
  readonly grams: number
  /** Whole drops; null for a dye by mass. */
  readonly drops: number | null
  /** What the whole drops come to, g per litre. */
  readonly gramsPerLitre: number
  readonly massFraction: number
}

export interface BatchCase {
  readonly sheet: ProductSheet
  readonly shares: MixShares
  /** Null: the sheet could not be fitted, so only its own figures limit the batch. */
  readonly chemistry: ResinChemistry | null
  readonly litres: number
  readonly roomC: number
  readonly resinC: number
  /** From the first stir to the last drop of one batch. */
  readonly handlingMinutes: number
  /** What the bucket holds, kg of mix; null: no limit. */
  readonly bucketKg: number | null
  readonly dye: Dye | null
}

const MOST_BATCHES = 40
/** A batch counts as cool until it is so much warmer than it was mixed. */
const GREATEST_WARMING_K = 5

/**
 * Time in which a batch can be worked, minutes.
 * @returns never more than the sheet's own time; null where the sheet states none
 * Method: the bucket of the sheet's own test is followed for its working time; the batch has as long as it takes to
 * the same degree of cure.
 * Rules: RES-16.
 */
export function workingMinutes(
  sheet: ProductSheet,
  chemistry: ResinChemistry | null,
  bucket: { readonly massKg: number; readonly roomC: number; readonly resinC: number },
): number | null {
  if (sheet.workingTime === null) return null
  const { minutes, massKg, temperatureC } = sheet.workingTime
  if (chemistry === null) return minutes
  const tested = { massKg, roomC: temperatureC, resinC: temperatureC }
  const degree = bucketDegree(chemistry, tested, minutes / 60)
  const hours = bucketHoursToDegree(chemistry, bucket, degree)
  return hours === null ? minutes : Math.min(minutes, hours * 60)
}

/**
 * Fewest equal batches that stay workable and cool while they are handled.
 * Rules: RES-16.
 */
export function batchPlan(wish: BatchCase): BatchPlan {
  const density = wish.shares.mixedDensityKgPerM3 ?? GENERIC_CHEMISTRY.densityKgPerM3
  const totalKg = (wish.litres * density) / 1000
  const mostKg = Math.min(wish.sheet.greatestMassKg ?? Infinity, wish.bucketKg ?? Infinity)
  const least = Math.max(1, Math.ceil(totalKg / mostKg - 1e-9))
  const at = (count: number): BatchPlan => batchesOf(wish, count, totalKg / count)
  const most = Math.max(least, MOST_BATCHES)
  const fewest = at(least)
  // Where the smallest batches do not last either, more of them help nobody.
  if (fewest.isInTime || !at(most).isInTime) return fewest
  // A smaller batch never warms sooner, so the fewest that do are found by halving.
  let [tooFew, enough] = [least, most]
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2)
    if (at(middle).isInTime) enough = middle
    else tooFew = middle
  }
  return at(enough)
}

function batchesOf(wish: BatchCase, count: number, massKg: number): BatchPlan {
  const { sheet, chemistry, shares, roomC, resinC, handlingMinutes } = wish
  const litresEach = wish.litres / count
  const working = workingMinutes(sheet, chemistry, { massKg, roomC, resinC })
  const plus5Hours =
    chemistry === null ? null : bucketHoursToWarm(chemistry, { massKg, roomC, resinC }, GREATEST_WARMING_K)
  const plus5Minutes = plus5Hours === null ? null : plus5Hours * 60
  return {
    count,
    litresEach,
    kgEach: shares.mixedDensityKgPerM3 === null ? null : massKg,
    partsEach: mixParts(shares, litresEach),
    dye: wish.dye === null ? null : batchDye(wish.dye, litresEach, massKg),
    workingMinutes: working,
    plus5Minutes,
    isInTime: handlingMinutes <= (working ?? Infinity) && handlingMinutes <= (plus5Minutes ?? Infinity),
  }
}

/**
 * Dye for one batch; drops are whole, so the dose that is really given is stated.
 * Rules: RES-16.
 */
export function batchDye(dye: Dye, litres: number, massKg: number): BatchDye {
  const drops = dye.kind === 'drops' ? Math.max(1, Math.round(dye.dropsPerLitre * litres)) : null
  const grams = dye.kind === 'grams' ? dye.gramsPerLitre * litres : (drops ?? 0) * dye.gramsPerDrop
  return { grams, drops, gramsPerLitre: grams / litres, massFraction: grams / 1000 / massKg }
}

/**
 * How unevenly the batches of a job are dyed.
 * @returns greatest less least dose over the mean; 0 for one batch or none
 * Rules: RES-16.
 */
export function dyeSpread(batches: readonly BatchPlan[]): number {
  const doses = batches.flatMap(({ dye }) => (dye === null ? [] : [dye.gramsPerLitre]))
  if (doses.length === 0) return 0
  const mean = doses.reduce((sum, dose) => sum + dose, 0) / doses.length
  return mean > 0 ? (Math.max(...doses) - Math.min(...doses)) / mean : 0
}
