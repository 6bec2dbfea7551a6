import {
  choleskyFactor,
  choleskySolve,
  entryOf,
  gramMatrix,
  type Matrix,
  transposeTimes,
  zeroMatrix,
} from './matrix'

export interface LeastSquaresProblem {
  readonly start: readonly number[]
  /** Step of each parameter for the central difference; about 1e-4 of what matters. */
  readonly steps: readonly number[]
  /** Residuals over their standard deviations; NaN anywhere refuses the step. */
  readonly residuals: (parameters: readonly number[]) => ArrayLike<number>
  readonly mostIterations?: number
}

export interface LeastSquaresAnswer {
  readonly parameters: readonly number[]
  readonly residuals: readonly number[]
  /** Σ r². */
  readonly cost: number
  readonly jacobian: Matrix
  readonly converged: boolean
}

const STOP_SHARE = 1e-13
const MOST_DAMPING = 1e10

/**
 * Least squares of a smooth function of some tens of parameters.
 * @returns the answer with its Jacobian; `converged` false when the iterations ran out
 * Method: Levenberg–Marquardt with Marquardt's scaling (Nocedal and Wright, Numerical Optimization, section 10.3,
 * from memory), Jacobian by central differences.
 */
export function levenbergMarquardt(problem: LeastSquaresProblem): LeastSquaresAnswer {
  let parameters = [...problem.start]
  let residuals = Array.from(problem.residuals(parameters))
  let cost = sumOfSquares(residuals)
  let damping = 1e-4
  let converged = false
  for (let iteration = 0; iteration < (problem.mostIterations ?? 60) && !converged; iteration++) {
    const jacobian = differenceJacobian(problem, parameters, residuals.length)
    const gram = gramMatrix(jacobian)
    const gradient = transposeTimes(jacobian, residuals)
    let improved = false
    while (!improved && damping < MOST_DAMPING) {
      const step = dampedStep(gram, gradient, damping)
      const next = step === null ? parameters : parameters.map((value, i) => value - (step[i] ?? 0))
      const nextResiduals = step === null ? [Number.NaN] : Array.from(problem.residuals(next))
      const nextCost = sumOfSquares(nextResiduals)
      if (nextCost <= cost) {
        converged = cost - nextCost <= STOP_SHARE * (cost + 1e-12)
        parameters = next
        residuals = nextResiduals
        cost = nextCost
        damping = Math.max(damping / 10, 1e-12)
        improved = true
      } else damping *= 10
    }
    // No downhill step is left: as low as the working precision allows.
    if (!improved) converged = true
  }
  const jacobian = differenceJacobian(problem, parameters, residuals.length)
  return { parameters, residuals, cost, jacobian, converged }
}

function dampedStep(gram: Matrix, gradient: Float64Array, damping: number): Float64Array | null {
  const damped = { ...gram, values: Float64Array.from(gram.values) }
  for (let i = 0; i < gram.rows; i++)
    damped.values[i * gram.rows + i] = entryOf(gram, i, i) * (1 + damping) + 1e-300
  const lower = choleskyFactor(damped)
  return lower === null ? null : choleskySolve(lower, gradient)
}

function differenceJacobian(
  problem: LeastSquaresProblem,
  parameters: readonly number[],
  rows: number,
): Matrix {
  const jacobian = zeroMatrix(rows, parameters.length)
  parameters.forEach((value, c) => {
    const step = problem.steps[c] ?? 1e-6
    const above = problem.residuals(parameters.with(c, value + step))
    const below = problem.residuals(parameters.with(c, value - step))
    for (let r = 0; r < rows; r++) {
      jacobian.values[r * parameters.length + c] = ((above[r] ?? 0) - (below[r] ?? 0)) / (2 * step)
    }
  })
  return jacobian
}

function sumOfSquares(values: readonly number[]): number {
  let sum = 0
  for (const value of values) sum += value * value
  return sum
}
