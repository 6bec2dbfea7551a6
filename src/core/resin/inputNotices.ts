import { LEAST_ALLOWED_RISE_K } from './deepestLayer'
import { isUsableGap } from './gapVolume'
import { notice, when, type Notices } from './notice'
import type { PourPlanInput } from './pourPlanInput'
import type { ResinNeed } from './pourPlanResult'
import { coolestRoomC, warmestRoomC } from './roomTemperature'
import type { SheetFit } from './sheetFit'
import { isUsablePiece } from './woodUplift'

/** Sides of the form above the cast: common practice, no source. */
const USUAL_SIDE_ABOVE_MM = 25

type Figure = readonly [figure: string, value: number | null, least: number, greatest: number]

const figuresOf = (input: PourPlanInput): readonly Figure[] => [
  ['castDepthMm', input.castDepthMm, 0.5, 1000],
  ['measuredLitres', input.measuredLitres, 0.001, 5000],
  ['lossFraction', input.lossFraction, 0, 1],
  ['handlingMinutes', input.handlingMinutes, 1, 1440],
  ['bucketKg', input.bucketKg, 0.01, 1000],
  ['firstStartHour', input.firstStartHour, 0, 24],
  ['packMarginFraction', input.packMarginFraction, 0, 2],
  ['haveLitres', input.haveLitres, 0, 5000],
  ['woodWPerMK', input.setting.woodWPerMK, 0.02, 2],
  ['roomC', warmestRoomC(input.setting.room), -20, 70],
  ['roomC', coolestRoomC(input.setting.room), -20, 70],
  ['resinC', input.resinC, -20, 90],
  ...input.layers.flatMap(({ depthMm, startHour }): readonly Figure[] => [
    ['layerDepthMm', depthMm, 0.1, 1000],
    ['layerStartHour', startHour, 0, 10_000],
  ]),
]

/** What cannot be used at all, and what is left out for it. Rules: RES-9. */
export function inputNotices(input: PourPlanInput): Notices {
  const bad = input.gaps.filter((gap) => !isUsableGap(gap))
  const depths = input.layers.flatMap(({ depthMm }) => (depthMm === null ? [] : [depthMm]))
  const sumMm = depths.reduce((sum, depthMm) => sum + depthMm, 0)
  const values = { sumMm, castDepthMm: input.castDepthMm }
  return [
    ...figuresOf(input)
      .filter(([, value, least, greatest]) => value !== null && !(value >= least && value <= greatest))
      .map(([figure, value]) => notice('figure-unusable', 'blocker', { figure, value: value ?? 0 })),
    ...when(bad.length === input.gaps.length, notice('gaps-missing', 'blocker')),
    ...bad.map(({ name }) => notice('gap-figure-unusable', 'warning', { gapName: name })),
    ...input.pieces
      .filter((piece) => !isUsablePiece(piece))
      .map(({ name }) => notice('piece-figure-unusable', 'warning', { pieceName: name })),
    ...when(sumMm > input.castDepthMm + 0.1, notice('layers-do-not-add-up', 'warning', values)),
  ]
}

/** Form, packs and what follows from the amount. Rules: RES-9, RES-20. */
export function needNotices(input: PourPlanInput, need: ResinNeed | null): Notices {
  const { castDepthMm, formHeightMm, sheet } = input
  const badPacks = sheet.packs.filter(({ litres, priceCents }) => !(litres >= 0.001 && priceCents >= 0))
  return [
    ...(formHeightMm === null ? [] : formNotices(castDepthMm, formHeightMm)),
    ...when(need !== null && sheet.packs.length === 0, notice('packs-missing', 'note')),
    ...badPacks.map(({ name }) => notice('pack-figure-unusable', 'warning', { packName: name })),
  ]
}

function formNotices(castDepthMm: number, formHeightMm: number): Notices {
  const values = { castDepthMm, formHeightMm }
  if (castDepthMm > formHeightMm) return [notice('cast-deeper-than-form', 'warning', values)]
  const usual = { ...values, usualMm: USUAL_SIDE_ABOVE_MM }
  return when(formHeightMm - castDepthMm < USUAL_SIDE_ABOVE_MM, notice('form-sides-low', 'note', usual))
}

/** Room and resin against the sheet. Rules: RES-9, RES-12. */
export function placeNotices(input: PourPlanInput, fit: SheetFit): Notices {
  const { sheet, setting } = input
  const warmest = warmestRoomC(setting.room)
  const coolest = coolestRoomC(setting.room)
  const resinC = input.resinC ?? coolest
  const coreLimitC = Math.min(fit.nominal.coreLimitC, fit.low.coreLimitC, fit.high.coreLimitC)
  const hottest = Math.max(warmest, input.resinC ?? warmest)
  const leastRoomC = sheet.leastRoomC ?? -Infinity
  const leastResinC = sheet.leastResinC ?? -Infinity
  return [
    ...when(!fit.isExact, notice('sheet-not-reached', 'warning', { deepestLayerMm: sheet.deepestLayerMm })),
    ...when(
      hottest >= coreLimitC - LEAST_ALLOWED_RISE_K,
      notice('room-too-hot', 'blocker', { roomC: hottest, coreLimitC }),
    ),
    ...when(
      coolest < leastRoomC,
      notice('room-colder-than-sheet', 'warning', { roomC: coolest, leastC: leastRoomC }),
    ),
    ...when(
      resinC < leastResinC,
      notice('resin-colder-than-sheet', 'warning', { resinC, leastC: leastResinC }),
    ),
  ]
}
