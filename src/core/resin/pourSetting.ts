import { conductivityWPerMK } from '../wood'
import { inertCells, type HeatCell } from './heatCell'
import { ZERO_CELSIUS_K } from './resinChemistry'
import { meanRoomC, type RoomTemperature } from './roomTemperature'

export type Air = 'still' | 'fans'
export type Beneath = 'board-on-bench' | 'open' | 'insulated'

/** Where a pour cures. */
export interface PourSetting {
  readonly room: RoomTemperature
  readonly air: Air
  /** A faced board on a bench; the board alone with air below it; or nothing that takes heat. */
  readonly beneath: Beneath
  /** Conductivity of the wood beside the gap, W/mK: see woodConductivityWPerMK. */
  readonly woodWPerMK: number
}

/**
 * Heat passed to the air, W/m²K. Still: about 3.9 by convection and 5.8 by radiation. Fans: from memory. Free
 * convection of gases is 2 to 25 and forced 25 to 250 in textbook tables (read in lecture notes).
 */
const TOP_W_PER_M2K: Readonly<Record<Air, number>> = { still: 9, fans: 18 }
const BENEATH_W_PER_M2K = 6
/** The sides' own heat transfer is that of the top and a little from below: tuned with the two-dimensional code. */
const SIDE_EXTRA_W_PER_M2K = 3

/**
 * Faced particle board and a wooden bench; thicknesses of common practice. Board: between the low and the high density
 * of textbook tables (0.078 to 0.17 W/mK, 590 to 1000 kg/m³, 1300 J/kgK; from memory). Bench: wood as by the Wood
 * Handbook's equation 4-15, heat capacity from memory.
 */
const BOARD = { thicknessM: 0.018, conductivityWPerMK: 0.13, volumetricHeatJPerM3K: 700 * 1400, cells: 4 }
const BENCH = { thicknessM: 0.04, conductivityWPerMK: 0.14, volumetricHeatJPerM3K: 600 * 1700, cells: 5 }

export const topWPerM2K = (air: Air): number => TOP_W_PER_M2K[air]

/** @returns heat transfer below the lowest cell, W/m²K */
export const bottomWPerM2K = (beneath: Beneath): number => (beneath === 'insulated' ? 0 : BENEATH_W_PER_M2K)

/** @returns what lies under the resin, at the room's mean temperature, from the bottom upward */
export function cellsBeneath(setting: PourSetting): readonly HeatCell[] {
  const temperatureK = meanRoomC(setting.room) + ZERO_CELSIUS_K
  if (setting.beneath === 'insulated') return []
  const board = inertCells({ ...BOARD, temperatureK })
  return setting.beneath === 'open' ? board : [...inertCells({ ...BENCH, temperatureK }), ...board]
}

/**
 * Conductivity of wood across the grain.
 * @param basicGravity  oven-dry mass over green volume, relative to water
 * @param moisturePercent  below 25 %
 * @returns W/mK, ±20 %
 * Method: Wood Handbook (FPL-GTR-282), equation 4-15: G·(0.1941 + 0.004064·MC) + 0.01864.
 * Rules: RES-7.
 */
export const woodConductivityWPerMK = (basicGravity: number, moisturePercent: number): number =>
  conductivityWPerMK(basicGravity, moisturePercent / 100)

/**
 * Loss from the middle of a gap to the wood on both sides of it.
 * @param widthMm  null: so wide that the sides do not matter
 * @returns heat transfer at each side, W/m²K; the volume loses 2·U/w
 * Method: min(1, (4D/w)^1.5) / [1/√(k(h+3)/D) + w/(4k)]: a fin of wood as deep as the pour; the exponent was tuned
 * against a two-dimensional code.
 * Rules: RES-7.
 */
export function sideWPerM2K(
  depthMm: number,
  widthMm: number | null,
  setting: PourSetting,
  resinWPerMK: number,
): number {
  if (widthMm === null) return 0
  const depthM = depthMm / 1000
  const widthM = widthMm / 1000
  const fin = Math.sqrt((setting.woodWPerMK * (topWPerM2K(setting.air) + SIDE_EXTRA_W_PER_M2K)) / depthM)
  const reach = Math.min(1, ((4 * depthM) / widthM) ** 1.5)
  return reach / (1 / fin + widthM / (4 * resinWPerMK))
}
