import { notice, type ResinNotice } from './notice'

/** Parts of resin to parts of hardener. */
export interface MixRatio {
  readonly resin: number
  readonly hardener: number
}

/** One kind of pack on sale; litres of both parts together. */
export interface PackKind {
  readonly name: string
  readonly litres: number
  readonly priceCents: number
}

/** What the maker reads off the sheet of the product in hand. Null: the sheet does not say. */
export interface ProductSheet {
  readonly name: string
  /** True for the profiles that come with the program: to be replaced by the sheet in hand. */
  readonly isExample: boolean
  readonly ratioByVolume: MixRatio | null
  readonly ratioByMass: MixRatio | null
  readonly resinDensityKgPerM3: number | null
  readonly hardenerDensityKgPerM3: number | null
  readonly mixedDensityKgPerM3: number | null
  /** Deepest layer at the reference temperature. */
  readonly deepestLayerMm: number
  readonly referenceC: number
  /** Highest surface temperature that the sheet allows, still air. */
  readonly surfacePeakLimitC: number
  /** Hours to the peak of the deepest layer at the reference temperature. */
  readonly peakHours: number | null
  /** Width of the gap or form in which the deepest layer was tested. */
  readonly testWidthMm: number | null
  readonly leastLayerMm: number | null
  readonly workingTime: {
    readonly minutes: number
    readonly massKg: number
    readonly temperatureC: number
  } | null
  /** Window in which the next layer bonds without scuffing, hours after the pour. */
  readonly recoatLeastHours: number | null
  readonly recoatGreatestHours: number | null
  readonly demouldHours: number | null
  /** Greatest mass in one pour. */
  readonly greatestMassKg: number | null
  readonly leastRoomC: number | null
  readonly leastResinC: number | null
  /** Greatest share of dye by mass. */
  readonly greatestDyeFraction: number | null
  readonly packs: readonly PackKind[]
}

type Figure = readonly [name: keyof ProductSheet, least: number, greatest: number]

/** What a figure can be at all; outside of it the sheet was misread. */
const FIGURES: readonly Figure[] = [
  ['deepestLayerMm', 0.5, 500],
  ['referenceC', -10, 60],
  ['surfacePeakLimitC', -10, 200],
  ['peakHours', 0.05, 500],
  ['testWidthMm', 1, 20_000],
  ['leastLayerMm', 0.1, 500],
  ['recoatLeastHours', 0, 1000],
  ['recoatGreatestHours', 0, 1000],
  ['demouldHours', 0, 2000],
  ['greatestMassKg', 0.01, 10_000],
  ['leastRoomC', -20, 60],
  ['leastResinC', -20, 60],
  ['greatestDyeFraction', 0, 0.5],
]

/**
 * Looks over a sheet before it is used.
 * @returns a blocker for each figure that cannot be; the heat model needs a sheet without blockers
 * Rules: RES-9.
 */
export function sheetNotices(sheet: ProductSheet): readonly ResinNotice[] {
  const found: ResinNotice[] = []
  if (sheet.isExample) found.push(notice('sheet-is-example', 'warning', { sheetName: sheet.name }))
  for (const [figure, least, greatest] of FIGURES) {
    const value = sheet[figure]
    if (typeof value === 'number' && !(value >= least && value <= greatest))
      found.push(notice('figure-unusable', 'blocker', { figure, value }))
  }
  if (sheet.surfacePeakLimitC < sheet.referenceC + 3) {
    const { surfacePeakLimitC, referenceC } = sheet
    found.push(notice('sheet-limit-below-reference', 'blocker', { surfacePeakLimitC, referenceC }))
  }
  return [...found, ...workingTimeNotices(sheet)]
}

function workingTimeNotices({ workingTime }: ProductSheet): readonly ResinNotice[] {
  if (workingTime === null) return []
  const { minutes, massKg, temperatureC } = workingTime
  const usable =
    minutes > 0 && minutes < 10_000 && massKg > 0 && massKg < 1000 && Math.abs(temperatureC - 20) < 60
  return usable ? [] : [notice('figure-unusable', 'blocker', { figure: 'workingTime', value: minutes })]
}
