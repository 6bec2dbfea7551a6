import { ConductionSolver, type HeatEnds } from './conductionSolver'
import type { CureLaw } from './cureLaw'
import type { HeatCell } from './heatCell'

/** How finely time is cut. */
export interface StepLimits {
  /** Greatest rise of the degree of cure in one step. */
  readonly greatestDegreeStep: number
  readonly greatestStepS: number
}

/** Measured on the 50 mm pour: 0.02 keeps the core peak within 0.2 K of a step ten times finer. */
export const USUAL_STEPS: StepLimits = { greatestDegreeStep: 0.02, greatestStepS: 1200 }

/** Heat per area since the run began, J/m²: stored = released − lost, to rounding. */
export interface HeatBalance {
  readonly storedJPerM2: number
  readonly releasedJPerM2: number
  readonly lostJPerM2: number
}

/**
 * Transient heat and cure of a stack of cells, one step at a time. Mutable; owned by the function that made it.
 * Method: Strang splitting: half a step of reaction, a step of conduction, half a step of reaction. The reaction is
 * an explicit midpoint step in the degree of cure with the temperature tied to it, so no heat is lost to the method.
 * Rules: RES-4, RES-5.
 */
export class HeatRun {
  readonly temperatureK: Float64Array
  readonly degree: Float64Array
  readonly #cells: readonly HeatCell[]
  readonly #fullRiseK: Float64Array
  readonly #firstReacting: number
  readonly #solver: ConductionSolver
  readonly #law: CureLaw
  readonly #startK: Float64Array
  readonly #startDegree: Float64Array
  #timeS: number
  #greatestRate: number
  #lostJPerM2 = 0

  constructor(cells: readonly HeatCell[], ends: HeatEnds, law: CureLaw, startS: number) {
    this.#cells = cells
    this.#law = law
    this.#timeS = startS
    this.#solver = new ConductionSolver(cells, ends)
    this.temperatureK = Float64Array.from(cells, (cell) => cell.temperatureK)
    this.degree = Float64Array.from(cells, (cell) => cell.degree)
    this.#startK = Float64Array.from(this.temperatureK)
    this.#startDegree = Float64Array.from(this.degree)
    this.#fullRiseK = Float64Array.from(cells, (cell) => cell.fullRiseK)
    const first = cells.findIndex((cell) => cell.fullRiseK > 0)
    this.#firstReacting = first === -1 ? cells.length : first
    this.#greatestRate = cells.reduce(
      (most, cell) => (cell.fullRiseK > 0 ? Math.max(most, law(cell.degree, cell.temperatureK)) : most),
      0,
    )
  }

  get timeS(): number {
    return this.#timeS
  }

  get surfaceK(): number {
    return this.#solver.surfaceK(this.temperatureK, this.#timeS)
  }

  /** The cells as they are now, to lay the next layer on. */
  get cells(): readonly HeatCell[] {
    return this.#cells.map((cell, index) => ({
      ...cell,
      temperatureK: this.temperatureK[index] ?? cell.temperatureK,
      degree: this.degree[index] ?? cell.degree,
    }))
  }

  get balance(): HeatBalance {
    let stored = 0
    let released = 0
    for (let i = 0; i < this.temperatureK.length; i += 1) {
      const capacity = this.#solver.capacity[i] ?? 0
      stored += capacity * ((this.temperatureK[i] ?? 0) - (this.#startK[i] ?? 0))
      released += capacity * (this.#fullRiseK[i] ?? 0) * ((this.degree[i] ?? 0) - (this.#startDegree[i] ?? 0))
    }
    return { storedJPerM2: stored, releasedJPerM2: released, lostJPerM2: this.#lostJPerM2 }
  }

  /** Takes one step, at most to the given time. */
  advance(untilS: number, limits: StepLimits): void {
    const wanted = Math.min(limits.greatestStepS, limits.greatestDegreeStep / this.#greatestRate)
    const left = untilS - this.#timeS
    // Equal steps for what is left, so that no sliver of time is left for a step of its own.
    const count = Math.ceil(left / wanted)
    const stepS = left / count
    this.#react(stepS / 2)
    this.#lostJPerM2 += this.#solver.step(this.temperatureK, this.#timeS, stepS)
    this.#react(stepS / 2)
    this.#timeS = count === 1 ? untilS : this.#timeS + stepS
  }

  #react(stepS: number): void {
    let greatest = 0
    const { degree, temperatureK } = this
    const law = this.#law
    for (let i = this.#firstReacting; i < degree.length; i += 1) {
      const rise = this.#fullRiseK[i] ?? 0
      if (rise === 0) continue
      const before = degree[i] ?? 0
      const kelvin = temperatureK[i] ?? 0
      const half = (law(before, kelvin) * stepS) / 2
      const rate = law(before + half, kelvin + rise * half)
      const after = Math.min(1, before + rate * stepS)
      degree[i] = after
      temperatureK[i] = kelvin + rise * (after - before)
      if (rate > greatest) greatest = rate
    }
    this.#greatestRate = greatest
  }
}
