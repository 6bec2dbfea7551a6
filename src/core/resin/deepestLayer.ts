import { findRoot } from './findRoot'
import { pourPeak, type PourPeak } from './pourPeak'
import type { PourSetting } from './pourSetting'
import { GAS_CONSTANT_J_PER_MOL_K, ZERO_CELSIUS_K } from './resinChemistry'
import { meanRoomC, warmestRoomC } from './roomTemperature'
import type { FittedResin, SheetFit } from './sheetFit'

/** Where and how a layer is to be poured. */
export interface PourConditions {
  readonly setting: PourSetting
  /** Hour of the day; matters only where the room's temperature swings. */
  readonly startHour: number
  readonly resinC: number
  /** Width of the widest gap, mm; null: so wide that its sides do not matter. */
  readonly widthMm: number | null
}

/**
 * Deepest layers whose core stays at the limit, mm, before any margin. 0: the room or the resin alone is as hot as the
 * limit. Infinity: no layer up to 300 mm reaches it, as in a narrow gap.
 */
export interface DeepestLayer {
  readonly depthMm: number
  /** Over the band of activation energies. */
  readonly bandMm: readonly [least: number, greatest: number]
  /** Peak of the deepest layer itself, usual activation energy; null where that is 0 or Infinity. */
  readonly peak: PourPeak | null
}

const LEAST_DEPTH_LOG = Math.log(0.2)
const GREATEST_DEPTH_LOG = Math.log(300)
const DEPTH_TOLERANCE_LOG = 0.004
/** A room so near to the limit leaves nothing to plan with. */
export const LEAST_ALLOWED_RISE_K = 5

/** A pour that stays at the room's temperature counts as a rise too small to matter. */
const logRise = (riseK: number): number => Math.log(Math.max(1e-6, riseK))

/**
 * The layer that just reaches the core limit in given conditions.
 * @returns mm; 0 where every layer is too deep, Infinity where none is (see DeepestLayer)
 * Method: root of ln(core rise / allowed rise) over ln depth, begun from the scaling law between Frank-Kamenetskii's
 * and Semenov's: L = L₀·(T/T₀)^1.5·exp[¾(E/R)(1/T − 1/T₀)].
 * Rules: RES-12.
 */
export function deepestLayerMm(resin: FittedResin, conditions: PourConditions, guessMm: number): number {
  const { room } = conditions.setting
  if (Math.max(warmestRoomC(room), conditions.resinC) >= resin.coreLimitC - LEAST_ALLOWED_RISE_K) return 0
  const baseC = meanRoomC(room)
  const allowed = Math.log(resin.coreLimitC - baseC)
  const excess = (depthLog: number): number =>
    logRise(peakAt(resin, conditions, Math.exp(depthLog)).coreC - baseC) - allowed
  const guess = Math.log(guessMm)
  const found = findRoot(excess, {
    guess,
    step: 0.05,
    least: LEAST_DEPTH_LOG,
    greatest: GREATEST_DEPTH_LOG,
    tolerance: DEPTH_TOLERANCE_LOG,
  })
  if (found !== null) return Math.exp(found)
  return excess(GREATEST_DEPTH_LOG) > 0 ? 0 : Infinity
}

export function peakAt(resin: FittedResin, conditions: PourConditions, depthMm: number): PourPeak {
  const { setting, startHour, resinC, widthMm } = conditions
  return pourPeak(resin.chemistry, { layer: { depthMm, widthMm, resinC }, setting, startHour })
}

/**
 * Scaling of the deepest layer with the room's temperature, between Frank-Kamenetskii's and Semenov's laws.
 * @returns mm, within a few per cent of the simulation in still air
 */
export function scaledDepthMm(resin: FittedResin, sheetDepthMm: number, roomC: number): number {
  const { activationEnergyJPerMol, referenceC } = resin.chemistry
  const roomK = roomC + ZERO_CELSIUS_K
  const referenceK = referenceC + ZERO_CELSIUS_K
  const arrhenius = (0.75 * activationEnergyJPerMol * (1 / roomK - 1 / referenceK)) / GAS_CONSTANT_J_PER_MOL_K
  return sheetDepthMm * (roomK / referenceK) ** 1.5 * Math.exp(arrhenius)
}

/**
 * Deepest layer with its band.
 * @param sheetDepthMm  the sheet's own deepest layer: where the search begins
 * Rules: RES-12.
 */
export function deepestLayer(fit: SheetFit, conditions: PourConditions, sheetDepthMm: number): DeepestLayer {
  const roomC = meanRoomC(conditions.setting.room)
  const scaled = (resin: FittedResin): number => scaledDepthMm(resin, sheetDepthMm, roomC)
  const depthMm = deepestLayerMm(fit.nominal, conditions, scaled(fit.nominal))
  const isFound = depthMm > 0 && depthMm < Infinity
  const other = (resin: FittedResin): number =>
    deepestLayerMm(
      resin,
      conditions,
      isFound ? (depthMm * scaled(resin)) / scaled(fit.nominal) : scaled(resin),
    )
  const depths = [depthMm, other(fit.low), other(fit.high)]
  return {
    depthMm,
    bandMm: [Math.min(...depths), Math.max(...depths)],
    peak: isFound ? peakAt(fit.nominal, conditions, depthMm) : null,
  }
}

/** One line of the table of deepest layers. */
export interface DeepestAtRoom {
  readonly roomC: number
  readonly still: DeepestLayer
  readonly fans: DeepestLayer
}

/**
 * The table of deepest layers by room temperature, wide gap, resin at room temperature.
 * Rules: RES-12.
 */
export function deepestByRoom(
  fit: SheetFit,
  sheetDepthMm: number,
  roomsC: readonly number[],
  setting: Omit<PourSetting, 'room' | 'air'>,
): readonly DeepestAtRoom[] {
  return roomsC.map((roomC) => {
    const at = (air: PourSetting['air']): DeepestLayer =>
      deepestLayer(
        fit,
        {
          setting: { ...setting, air, room: { kind: 'steady', roomC } },
          startHour: 0,
          resinC: roomC,
          widthMm: null,
        },
        sheetDepthMm,
      )
    return { roomC, still: at('still'), fans: at('fans') }
  })
}
