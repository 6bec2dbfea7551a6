import { gapWidthsMm } from '../../layout'
import {
  type BucketHeat,
  bucketHeat,
  type DeepestAtRoom,
  deepestByRoom,
  fitSheet,
  gapBetween,
  type LogRefit,
  mixShares,
  type PourGap,
  pourPlan,
  type PourPlanResult,
  type ProductSheet,
  refitFromLog,
  roomAtC,
  sheetNotices,
  type SheetFit,
} from '../../resin'
import { rememberByText } from '../rememberByText'
import type { GapToFill } from './gapsToFill'
import type { PourTask } from './pourTask'

/** A bucket of mix left standing. */
export interface BucketLeft {
  readonly massKg: number
  readonly heat: BucketHeat
}

/** The whole answer to a pour task. */
export interface PourResult extends PourPlanResult {
  readonly gaps: readonly PourGap[]
  /** The maker's own pours against the model; null where none is logged or the sheet cannot be fitted. */
  readonly refit: LogRefit | null
  /** Deepest layers by room temperature, before the margin; none without a fit. */
  readonly rooms: readonly DeepestAtRoom[]
  readonly buckets: readonly BucketLeft[]
}

const FITS_KEPT = 8
const WIDTHS_KEPT = 64
/** Rooms of the table of deepest layers, °C. */
export const ROOMS_SHOWN_C = [15, 18, 21, 24, 27, 30, 35] as const
const BUCKETS_KG = [1, 2, 5, 10] as const
/** Where leaning wood closes a gap altogether there is still a film. */
const LEAST_WIDTH_MM = 0.01

const fitOf = rememberByText(
  ({ sheet, densityKgPerM3 }: { readonly sheet: ProductSheet; readonly densityKgPerM3: number | null }) =>
    fitSheet(sheet, densityKgPerM3),
  FITS_KEPT,
)
const widthsOf = rememberByText(gapWidthsMm, WIDTHS_KEPT)

/**
 * The whole pour of an option: what the worker does, and what tests call directly.
 * @returns the same answer for the same task; never throws on a maker's figures
 * Rules: POUR-5, POUR-6.
 */
export function answerPour({ gaps: toFill, input, log }: PourTask): PourResult {
  const { sheet, setting } = input
  const gaps = toFill.map(measuredGap)
  const isFitted = sheetNotices(sheet).every(({ severity }) => severity !== 'blocker')
  if (!isFitted) return { ...pourPlan({ ...input, gaps }), gaps, ...NOTHING_FITTED }
  const fit = fitOf({ sheet, densityKgPerM3: mixShares(sheet).mixedDensityKgPerM3 })
  const place = { beneath: setting.beneath, woodWPerMK: setting.woodWPerMK }
  const refit = log.length === 0 ? null : refitFromLog(fit, log, place, sheet.surfacePeakLimitC)
  const used = refit?.fit ?? fit
  const plan = pourPlan({ ...input, gaps }, used)
  return {
    ...plan,
    notices: [...plan.notices, ...(refit?.notices ?? [])],
    gaps,
    refit,
    rooms: deepestByRoom(used, sheet.deepestLayerMm, ROOMS_SHOWN_C, place),
    buckets: plan.heat === null ? [] : bucketsOf(used, input),
  }
}

const NOTHING_FITTED = { refit: null, rooms: [], buckets: [] } as const

function bucketsOf({ nominal }: SheetFit, input: PourTask['input']): readonly BucketLeft[] {
  const roomC = roomAtC(input.setting.room, input.firstStartHour)
  const masses = [...new Set([...BUCKETS_KG, ...(input.bucketKg === null ? [] : [input.bucketKg])])]
  return masses
    .toSorted((a, b) => a - b)
    .map((massKg) => ({
      massKg,
      heat: bucketHeat(nominal.chemistry, massKg, roomC, input.resinC ?? roomC),
    }))
}

function measuredGap(gap: GapToFill): PourGap {
  const { region, widthMm, widerByMm, areaMm2 } = gap
  const widths = region === null ? { widestMm: widthMm, narrowestMm: widthMm } : widthsOf(region)
  // Beside leaning wood a gap is taken to widen as its area does: exact for a strip.
  const at = (heightMm: number, sectionMm2 = areaMm2) => ({
    heightMm,
    areaMm2: sectionMm2,
    widestMm: Math.max(LEAST_WIDTH_MM, (widths.widestMm * sectionMm2) / areaMm2) + widerByMm,
    narrowestMm: Math.max(LEAST_WIDTH_MM, (widths.narrowestMm * sectionMm2) / areaMm2) + widerByMm,
  })
  if (gap.sections === null) return gapBetween(gap.name, gap.kind, at(gap.bottomMm), at(gap.topMm))
  const sections = gap.sections.map(({ heightMm, areaMm2: sectionMm2 }) => at(heightMm, sectionMm2))
  return { name: gap.name, kind: gap.kind, sections }
}
