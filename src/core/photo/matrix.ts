import { InvariantError } from '../units'

/** A small dense matrix, row by row. Made, filled and used inside one calculation. */
export interface Matrix {
  readonly rows: number
  readonly cols: number
  readonly values: Float64Array
}

export const zeroMatrix = (rows: number, cols: number): Matrix => ({
  rows,
  cols,
  values: new Float64Array(rows * cols),
})

export function matrixFromRows(rows: readonly (readonly number[])[]): Matrix {
  const cols = rows[0]?.length ?? 0
  const matrix = zeroMatrix(rows.length, cols)
  rows.forEach((row, i) => matrix.values.set(row, i * cols))
  return matrix
}

export const entryOf = (m: Matrix, row: number, col: number): number => m.values[row * m.cols + col] ?? 0

/** JᵀJ, symmetric. */
export function gramMatrix(j: Matrix): Matrix {
  const gram = zeroMatrix(j.cols, j.cols)
  for (let a = 0; a < j.cols; a++) {
    for (let b = a; b < j.cols; b++) {
      let sum = 0
      for (let r = 0; r < j.rows; r++) sum += entryOf(j, r, a) * entryOf(j, r, b)
      gram.values[a * j.cols + b] = sum
      gram.values[b * j.cols + a] = sum
    }
  }
  return gram
}

/** Jᵀr. */
export function transposeTimes(j: Matrix, vector: ArrayLike<number>): Float64Array {
  const product = new Float64Array(j.cols)
  for (let r = 0; r < j.rows; r++) {
    const weight = vector[r] ?? 0
    for (let c = 0; c < j.cols; c++) product[c] = (product[c] ?? 0) + entryOf(j, r, c) * weight
  }
  return product
}

export function matrixTimes(m: Matrix, vector: ArrayLike<number>): Float64Array {
  const product = new Float64Array(m.rows)
  for (let r = 0; r < m.rows; r++) {
    let sum = 0
    for (let c = 0; c < m.cols; c++) sum += entryOf(m, r, c) * (vector[c] ?? 0)
    product[r] = sum
  }
  return product
}

/** gᵀΣg, the variance of a quantity with gradient g. */
export function quadraticForm(sigma: Matrix, gradient: ArrayLike<number>): number {
  const product = matrixTimes(sigma, gradient)
  let sum = 0
  for (let i = 0; i < product.length; i++) sum += (product[i] ?? 0) * (gradient[i] ?? 0)
  return sum
}

/**
 * Lower triangle L with A = L Lᵀ, or null when A is not positive definite to working precision.
 * Method: Cholesky, row by row.
 */
export function choleskyFactor(a: Matrix): Matrix | null {
  if (a.rows !== a.cols)
    throw new InvariantError('Cholesky wants a square matrix', { rows: a.rows, cols: a.cols })
  const n = a.rows
  const lower = zeroMatrix(n, n)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = entryOf(a, i, j)
      for (let k = 0; k < j; k++) sum -= entryOf(lower, i, k) * entryOf(lower, j, k)
      if (i !== j) {
        lower.values[i * n + j] = sum / entryOf(lower, j, j)
        continue
      }
      if (!(sum > 1e-14 * entryOf(a, i, i)) || !(sum > 0)) return null
      lower.values[i * n + i] = Math.sqrt(sum)
    }
  }
  return lower
}

/** Solves L Lᵀ x = b. */
export function choleskySolve(lower: Matrix, b: ArrayLike<number>): Float64Array {
  const n = lower.rows
  const x = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    let sum = b[i] ?? 0
    for (let k = 0; k < i; k++) sum -= entryOf(lower, i, k) * (x[k] ?? 0)
    x[i] = sum / entryOf(lower, i, i)
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i] ?? 0
    for (let k = i + 1; k < n; k++) sum -= entryOf(lower, k, i) * (x[k] ?? 0)
    x[i] = sum / entryOf(lower, i, i)
  }
  return x
}

/** Inverse of a symmetric positive definite matrix, or null when it is not. */
export function inverseOfPositive(a: Matrix): Matrix | null {
  const lower = choleskyFactor(a)
  if (lower === null) return null
  const inverse = zeroMatrix(a.rows, a.rows)
  const unit = new Float64Array(a.rows)
  for (let c = 0; c < a.rows; c++) {
    unit.fill(0)
    unit[c] = 1
    const column = choleskySolve(lower, unit)
    for (let r = 0; r < a.rows; r++) inverse.values[r * a.rows + c] = column[r] ?? 0
  }
  return inverse
}
