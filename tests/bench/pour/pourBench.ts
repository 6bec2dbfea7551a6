import { deepestByRoom, EXAMPLE_SHEETS, pourPeak } from '../../../src/core/resin'
import { hottestOfGap } from '../../check-values/gapInTwoDimensions'
import { sheetFit } from '../../check-values/pourMeasures'
import { RESIN_CHECKS, agrees, foundValue, type ResinCheck } from '../../check-values/resinChecks'
import { planTimes } from './planTimes'

/** One line of the report. */
export type Line = Readonly<Record<string, unknown>> & { readonly ok: boolean }

const GAPS_MM = [25, 50, 100, 150, 200, 300, 400]
const ROOMS_C = [15, 20, 25, 30, 35, 40]
const WOOD_W_PER_MK = 0.16
/** The side loss is one number for a whole side; the exponent was tuned to within this of such a program. */
const SIDE_TOLERANCE_K = 3

const figure = (value: number): number => Number(value.toPrecision(6))

export function checkLine(check: ResinCheck, found: number): Line {
  const { id, expect: expected, tolerance, unit, source } = check
  return {
    kind: 'check',
    id,
    expected,
    found: figure(found),
    tolerance,
    unit,
    ok: agrees(check, found),
    source,
  }
}

function gapLine(gapMm: number): Line {
  const { chemistry } = sheetFit().nominal
  const resin = {
    ratePerS: chemistry.referenceRatePerS,
    referenceC: chemistry.referenceC,
    activationJPerMol: chemistry.activationEnergyJPerMol,
    startShare: chemistry.startShare,
    fullRiseK: chemistry.reactionHeatJPerKg / chemistry.heatCapacityJPerKgK,
  }
  const expected = hottestOfGap({ gapMm, depthMm: 50, roomC: 21, woodWPerMK: WOOD_W_PER_MK, resin })
  const found = pourPeak(chemistry, {
    layer: { depthMm: 50, widthMm: gapMm, resinC: 21 },
    setting: {
      room: { kind: 'steady', roomC: 21 },
      air: 'still',
      beneath: 'board-on-bench',
      woodWPerMK: WOOD_W_PER_MK,
    },
    startHour: 0,
  }).coreC
  return {
    kind: 'check',
    id: `two-dimensions-${gapMm}-mm`,
    expected: figure(expected),
    found: figure(found),
    tolerance: SIDE_TOLERANCE_K,
    unit: '°C',
    ok: Math.abs(found - expected) <= SIDE_TOLERANCE_K,
    source: { kind: 'independent-program', title: 'gapInTwoDimensions.ts: explicit, in two dimensions' },
  }
}

/** The table of deepest layers, whole millimetres: what a maker may be shown. */
function tableLines(): readonly Line[] {
  const sheet = EXAMPLE_SHEETS.slowCasting
  const setting = { beneath: 'board-on-bench', woodWPerMK: WOOD_W_PER_MK } as const
  return deepestByRoom(sheetFit(), sheet.deepestLayerMm, ROOMS_C, setting).map(({ roomC, still, fans }) => ({
    kind: 'deepest',
    roomC,
    stillMm: Math.round(still.depthMm),
    stillBandMm: still.bandMm.map(Math.round),
    fansMm: Math.round(fans.depthMm),
    peakHours: Number(still.peak?.coreHours.toFixed(1)),
    surfaceAtLimitC: Math.round(still.peak?.surfaceC ?? NaN),
    ok: true,
  }))
}

/**
 * All lines of the report.
 * @param spoil  adds so many tolerances to every found value: the bench must then fail
 */
export function pourLines(spoil = 0): readonly Line[] {
  return [
    ...RESIN_CHECKS.map((check) => checkLine(check, foundValue(check) + spoil * check.tolerance)),
    ...GAPS_MM.map(gapLine),
    ...tableLines(),
    ...planTimes(),
  ]
}
