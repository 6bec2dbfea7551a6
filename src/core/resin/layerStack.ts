import { InvariantError } from '../units'
import { autocatalyticLaw, type CureLaw } from './cureLaw'
import type { HeatCell } from './heatCell'
import { HeatRun, USUAL_STEPS, type HeatBalance, type StepLimits } from './heatRun'
import { bottomWPerM2K, cellsBeneath, sideWPerM2K, topWPerM2K, type PourSetting } from './pourSetting'
import { ZERO_CELSIUS_K, type ResinChemistry } from './resinChemistry'
import { roomAtC } from './roomTemperature'

/** One layer as it is poured. */
export interface PouredLayer {
  readonly depthMm: number
  /** Width of the gap, mm; null: so wide that its sides do not matter. */
  readonly widthMm: number | null
  readonly resinC: number
}

/** The stack at one moment. */
export interface StackMoment {
  readonly hour: number
  readonly surfaceC: number
  /** The hottest place of the resin. */
  readonly coreC: number
  /** Degree of cure at the top face's cell, and of the least cured place of the resin. */
  readonly surfaceDegree: number
  readonly leastDegree: number
  /** Mean degree of the uppermost layer. */
  readonly topLayerDegree: number
}

/** The resin cell by cell, from the bottom upward. */
export interface StackProfile {
  readonly heightsMm: readonly number[]
  readonly temperaturesC: readonly number[]
  readonly degrees: readonly number[]
}

const SECONDS_PER_HOUR = 3600
/** Cells a layer: 24 is within 0.2 K of the limit of fine grids for a 50 mm pour. */
export const CELLS_PER_LAYER = 24

/**
 * Layers of resin poured one upon another, in time. Mutable; owned by the function that made it.
 * Hours are counted from midnight before the first pour.
 * Rules: RES-4 to RES-8.
 */
export class LayerStack {
  readonly #chemistry: ResinChemistry
  readonly #setting: PourSetting
  readonly #law: CureLaw
  readonly #steps: StepLimits
  #run: HeatRun
  #layers = 0
  #depthMm = 0
  #layerOf: readonly number[] = []

  constructor(
    chemistry: ResinChemistry,
    setting: PourSetting,
    startHour: number,
    steps: StepLimits = USUAL_STEPS,
  ) {
    this.#chemistry = chemistry
    this.#setting = setting
    this.#law = autocatalyticLaw(chemistry)
    this.#steps = steps
    this.#run = this.#runOf(cellsBeneath(setting), startHour * SECONDS_PER_HOUR)
  }

  get hour(): number {
    return this.#run.timeS / SECONDS_PER_HOUR
  }

  get balance(): HeatBalance {
    return this.#run.balance
  }

  /** Pours a layer on what is there, now. */
  pour(layer: PouredLayer, cells = CELLS_PER_LAYER): void {
    if (!(layer.depthMm > 0 && Number.isFinite(layer.depthMm)))
      throw new InvariantError('a layer must be deeper than zero', { depthMm: layer.depthMm })
    this.#depthMm += layer.depthMm
    const fresh = this.#freshCell(layer, cells)
    const stack = [...this.#run.cells, ...Array.from({ length: cells }, () => fresh)]
    this.#layers += 1
    this.#layerOf = stack.map((cell) => cell.layer)
    this.#run = this.#runOf(stack, this.#run.timeS)
  }

  /** Runs on to an hour, or until `done` says so after a step. */
  runUntil(hour: number, done: (moment: StackMoment) => boolean = () => false): void {
    const untilS = hour * SECONDS_PER_HOUR
    while (this.#run.timeS < untilS) {
      this.#run.advance(untilS, this.#steps)
      if (done(this.moment())) return
    }
  }

  moment(): StackMoment {
    const { temperatureK, degree } = this.#run
    const top = this.#layers - 1
    let core = -Infinity
    let least = 1
    let topSum = 0
    let topCells = 0
    for (let i = 0; i < temperatureK.length; i += 1) {
      const layer = this.#layerOf[i] ?? -1
      if (layer < 0) continue
      const cure = degree[i] ?? 0
      core = Math.max(core, temperatureK[i] ?? 0)
      least = Math.min(least, cure)
      if (layer === top) {
        topSum += cure
        topCells += 1
      }
    }
    return {
      hour: this.hour,
      surfaceC: this.#run.surfaceK - ZERO_CELSIUS_K,
      coreC: core - ZERO_CELSIUS_K,
      surfaceDegree: degree[degree.length - 1] ?? 0,
      leastDegree: least,
      topLayerDegree: topCells === 0 ? 0 : topSum / topCells,
    }
  }

  profile(): StackProfile {
    const resin = this.#run.cells.filter((cell) => cell.layer >= 0)
    let below = 0
    return {
      heightsMm: resin.map((cell) => {
        below += cell.thicknessM * 1000
        return below - cell.thicknessM * 500
      }),
      temperaturesC: resin.map((cell) => cell.temperatureK - ZERO_CELSIUS_K),
      degrees: resin.map((cell) => cell.degree),
    }
  }

  #runOf(cells: readonly HeatCell[], startS: number): HeatRun {
    const { room, air, beneath } = this.#setting
    const ends = {
      bottomWPerM2K: bottomWPerM2K(beneath),
      topWPerM2K: topWPerM2K(air),
      airK: (timeS: number) => roomAtC(room, timeS / SECONDS_PER_HOUR) + ZERO_CELSIUS_K,
    }
    return new HeatRun(cells, ends, this.#law, startS)
  }

  #freshCell(layer: PouredLayer, cells: number): HeatCell {
    const { conductivityWPerMK, densityKgPerM3, heatCapacityJPerKgK, reactionHeatJPerKg } = this.#chemistry
    // The smaller of the two losses: the wood beside the gap may be as deep as the layer, or as the whole stack.
    const side = Math.min(
      sideWPerM2K(layer.depthMm, layer.widthMm, this.#setting, conductivityWPerMK),
      sideWPerM2K(this.#depthMm, layer.widthMm, this.#setting, conductivityWPerMK),
    )
    return {
      thicknessM: layer.depthMm / 1000 / cells,
      conductivityWPerMK,
      volumetricHeatJPerM3K: densityKgPerM3 * heatCapacityJPerKgK,
      temperatureK: layer.resinC + ZERO_CELSIUS_K,
      degree: 0,
      fullRiseK: reactionHeatJPerKg / heatCapacityJPerKgK,
      sideLossWPerM3K: layer.widthMm === null ? 0 : (2 * side) / (layer.widthMm / 1000),
      layer: this.#layers,
    }
  }
}
