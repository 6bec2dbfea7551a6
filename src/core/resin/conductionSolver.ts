import type { HeatCell } from './heatCell'

/** How the two ends of the stack meet the air, and the air's temperature at a time. */
export interface HeatEnds {
  readonly bottomWPerM2K: number
  readonly topWPerM2K: number
  readonly airK: (timeS: number) => number
}

/** Root of the L-stable two-stage method: γ = 1 − √2/2. */
const STAGE = 1 - Math.SQRT1_2

const inSeries = (first: number, second: number): number =>
  first > 0 && second > 0 ? (first * second) / (first + second) : 0

/**
 * Conduction through the stack, one implicit step at a time.
 * Method: finite volumes with harmonic face conductivity; singly diagonally implicit Runge–Kutta of two stages,
 * stiffly accurate and L-stable, so that a hot layer on a cold one does not ring; tridiagonal (Thomas) solve, one
 * factorisation for both stages. The heat that leaves is summed with the method's own weights, so the balance holds
 * to rounding.
 * Rules: RES-5.
 */
export class ConductionSolver {
  /** Heat held per kelvin and cell, J/(m² K). */
  readonly capacity: Float64Array
  readonly #count: number
  /** Conductance of the face below each cell, and last of the top face, W/(m² K). */
  readonly #faces: Float64Array
  /** Loss to the air of each cell: ends and sides, W/(m² K). */
  readonly #losses: Float64Array
  readonly #topConductance: number
  readonly #ends: HeatEnds
  readonly #below: Float64Array
  readonly #ratio: Float64Array
  readonly #pivot: Float64Array
  readonly #change: Float64Array

  constructor(cells: readonly HeatCell[], ends: HeatEnds) {
    const count = cells.length
    this.#count = count
    this.#ends = ends
    this.capacity = Float64Array.from(cells, (cell) => cell.thicknessM * cell.volumetricHeatJPerM3K)
    const half = cells.map((cell) => (2 * cell.conductivityWPerMK) / cell.thicknessM)
    this.#faces = Float64Array.from(half, (own, index) => inSeries(half[index - 1] ?? 0, own))
    this.#losses = Float64Array.from(cells, (cell) => cell.sideLossWPerM3K * cell.thicknessM)
    this.#topConductance = inSeries(half[count - 1] ?? 0, ends.topWPerM2K)
    this.#losses[0] = (this.#losses[0] ?? 0) + inSeries(half[0] ?? 0, ends.bottomWPerM2K)
    this.#losses[count - 1] = (this.#losses[count - 1] ?? 0) + this.#topConductance
    this.#below = new Float64Array(count)
    this.#ratio = new Float64Array(count)
    this.#pivot = new Float64Array(count)
    this.#change = new Float64Array(count)
  }

  /**
   * Temperature of the very top face: between the last cell's middle and the air.
   * @returns kelvin
   */
  surfaceK(temperatures: Float64Array, timeS: number): number {
    const air = this.#ends.airK(timeS)
    const last = temperatures[this.#count - 1] ?? air
    const { topWPerM2K } = this.#ends
    return topWPerM2K > 0 ? air + (this.#topConductance * (last - air)) / topWPerM2K : last
  }

  /**
   * Moves the temperatures on by one step, in place.
   * @returns heat lost to the air and the sides in the step, J/m²
   */
  step(temperatures: Float64Array, timeS: number, stepS: number): number {
    const stageS = STAGE * stepS
    this.#factorise(stageS)
    const change = this.#change
    const firstAir = this.#ends.airK(timeS + stageS)
    this.#solveChange(temperatures, stageS, firstAir)
    const firstLoss = this.#lossWPerM2(temperatures, firstAir, change)
    // y + (1 − γ)·h·k₁ with γ·h·k₁ = the change of the first stage
    const weight = (1 - STAGE) / STAGE
    for (let i = 0; i < this.#count; i += 1)
      temperatures[i] = (temperatures[i] ?? 0) + weight * (change[i] ?? 0)
    const lastAir = this.#ends.airK(timeS + stepS)
    this.#solveChange(temperatures, stageS, lastAir)
    const lastLoss = this.#lossWPerM2(temperatures, lastAir, change)
    for (let i = 0; i < this.#count; i += 1) temperatures[i] = (temperatures[i] ?? 0) + (change[i] ?? 0)
    return stepS * ((1 - STAGE) * firstLoss + STAGE * lastLoss)
  }

  #factorise(stageS: number): void {
    let ratioBelow = 0
    for (let i = 0; i < this.#count; i += 1) {
      const below = stageS * (this.#faces[i] ?? 0)
      const above = stageS * (this.#faces[i + 1] ?? 0)
      const diagonal = (this.capacity[i] ?? 0) + below + above + stageS * (this.#losses[i] ?? 0)
      const pivot = 1 / (diagonal - below * ratioBelow)
      ratioBelow = above * pivot
      this.#below[i] = below
      this.#pivot[i] = pivot
      this.#ratio[i] = ratioBelow
    }
  }

  /**
   * The change of each cell in one implicit stage. Solving for the change instead of the temperature keeps the heat
   * balance near to the rounding of one number, whatever the count of steps.
   */
  #solveChange(temperatures: Float64Array, stageS: number, air: number): void {
    let fromBelow = 0
    let carried = 0
    for (let i = 0; i < this.#count; i += 1) {
      const own = temperatures[i] ?? 0
      const toAbove = (this.#faces[i + 1] ?? 0) * (own - (temperatures[i + 1] ?? own))
      const gain = stageS * (fromBelow - toAbove - (this.#losses[i] ?? 0) * (own - air))
      fromBelow = toAbove
      carried = (gain + (this.#below[i] ?? 0) * carried) * (this.#pivot[i] ?? 0)
      this.#change[i] = carried
    }
    this.#substituteBack()
  }

  #substituteBack(): void {
    let above = 0
    for (let i = this.#count - 1; i >= 0; i -= 1) {
      above = (this.#change[i] ?? 0) + (this.#ratio[i] ?? 0) * above
      this.#change[i] = above
    }
  }

  #lossWPerM2(temperatures: Float64Array, air: number, change: Float64Array): number {
    let sum = 0
    for (let i = 0; i < this.#count; i += 1) {
      sum += (this.#losses[i] ?? 0) * ((temperatures[i] ?? 0) - air + (change[i] ?? 0))
    }
    return sum
  }
}
