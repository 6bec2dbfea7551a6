import { notice, type ResinNotice } from './notice'
import type { MixRatio, ProductSheet } from './productSheet'

/** How the two parts go together. Null: it cannot be worked out from what the sheet says. */
export interface MixShares {
  readonly hardenerPerResinByVolume: number | null
  readonly hardenerPerResinByMass: number | null
  readonly mixedDensityKgPerM3: number | null
  readonly notices: readonly ResinNotice[]
}

/** What goes into one amount of mix. */
export interface MixParts {
  readonly resinLitres: number | null
  readonly hardenerLitres: number | null
  readonly resinKg: number | null
  readonly hardenerKg: number | null
}

/** Disagreement that is said. Scales and jugs are worse than 1 %; off-ratio resin stays soft from about 5 %. */
const RATIO_TOLERANCE = 0.03

const quotient = (ratio: MixRatio | null): number | null =>
  ratio !== null && isUsable(ratio) ? ratio.hardener / ratio.resin : null

const isUsable = ({ resin, hardener }: MixRatio): boolean =>
  Number.isFinite(resin) && Number.isFinite(hardener) && resin > 0 && hardener > 0

const usableDensity = (density: number | null): number | null =>
  density !== null && density >= 500 && density <= 3000 ? density : null

/**
 * Ratio by volume and by mass, each from the other where the densities allow.
 * @returns shares, the density of the mix, and what does not agree
 * Method: mass ratio = volume ratio × hardener density / resin density; the volumes are taken to add up.
 * Rules: RES-10.
 */
export function mixShares(sheet: ProductSheet): MixShares {
  const densities = densitiesOf(sheet)
  const statedVolume = quotient(sheet.ratioByVolume)
  const statedMass = quotient(sheet.ratioByMass)
  const perVolume = densities === null ? null : densities.hardener / densities.resin
  const byMass = statedMass ?? scaled(statedVolume, perVolume)
  const byVolume = statedVolume ?? scaled(statedMass, perVolume === null ? null : 1 / perVolume)
  const found =
    densities !== null && byVolume !== null
      ? (densities.resin + densities.hardener * byVolume) / (1 + byVolume)
      : null
  const stated = usableDensity(sheet.mixedDensityKgPerM3)
  return {
    hardenerPerResinByVolume: byVolume,
    hardenerPerResinByMass: byMass,
    mixedDensityKgPerM3: stated ?? found,
    notices: [
      ...statedNotices(sheet),
      ...ratioNotices(statedMass, scaled(statedVolume, perVolume)),
      ...densityNotices(stated, found),
    ],
  }
}

const scaled = (value: number | null, factor: number | null): number | null =>
  value === null || factor === null ? null : value * factor

function densitiesOf(sheet: ProductSheet): { readonly resin: number; readonly hardener: number } | null {
  const resin = usableDensity(sheet.resinDensityKgPerM3)
  const hardener = usableDensity(sheet.hardenerDensityKgPerM3)
  return resin === null || hardener === null ? null : { resin, hardener }
}

function statedNotices({ ratioByVolume, ratioByMass }: ProductSheet): readonly ResinNotice[] {
  if (ratioByVolume === null && ratioByMass === null) return [notice('ratio-missing', 'blocker')]
  return [ratioByVolume, ratioByMass].flatMap((ratio) =>
    ratio === null || isUsable(ratio) ? [] : [notice('ratio-not-positive', 'blocker', { ...ratio })],
  )
}

function ratioNotices(stated: number | null, found: number | null): readonly ResinNotice[] {
  if (stated === null || found === null || Math.abs(stated / found - 1) <= RATIO_TOLERANCE) return []
  const values = { statedHardenerPer100: stated * 100, foundHardenerPer100: found * 100 }
  return [notice('ratio-disagrees', 'warning', values)]
}

function densityNotices(stated: number | null, found: number | null): readonly ResinNotice[] {
  if (stated === null && found === null) return [notice('densities-missing', 'warning')]
  if (stated === null || found === null || Math.abs(stated / found - 1) <= RATIO_TOLERANCE) return []
  return [notice('mixed-density-disagrees', 'warning', { statedKgPerM3: stated, foundKgPerM3: found })]
}

/**
 * Both parts of an amount of mix, by jug and by scale.
 * @param litres  of mix
 * @returns litres and kg of each part; null where the sheet does not allow it
 * Rules: RES-10.
 */
export function mixParts(shares: MixShares, litres: number): MixParts {
  const { hardenerPerResinByVolume: byVolume, hardenerPerResinByMass: byMass, mixedDensityKgPerM3 } = shares
  const kg = mixedDensityKgPerM3 === null ? null : (litres * mixedDensityKgPerM3) / 1000
  const resinLitres = byVolume === null ? null : litres / (1 + byVolume)
  const resinKg = byMass === null || kg === null ? null : kg / (1 + byMass)
  return {
    resinLitres,
    hardenerLitres: resinLitres === null ? null : litres - resinLitres,
    resinKg,
    hardenerKg: kg === null || resinKg === null ? null : kg - resinKg,
  }
}
