import { entryOf, type Matrix, zeroMatrix } from './matrix'

export interface SingularValues {
  /** Falling. */
  readonly values: readonly number[]
  /** Right singular vectors, in the order of the values. */
  readonly vectors: readonly (readonly number[])[]
}

/** Columns are turned against each other until every pair is square to this share of their lengths. */
const SQUARE_ENOUGH = 1e-15
const MOST_SWEEPS = 60

/**
 * Singular values and right singular vectors of a small matrix.
 * @param matrix any shape; with fewer rows than columns the missing values come out as 0
 * @returns values falling, each with its unit vector
 * Method: one-sided Jacobi (Hestenes): it works on the matrix itself, so small singular values keep their digits,
 * which forming AᵀA would lose. Demmel, Applied Numerical Linear Algebra, section 5.4.3 (from memory).
 */
export function singularValues(matrix: Matrix): SingularValues {
  const { rows, cols } = matrix
  const columns = Array.from({ length: cols }, (_, c) =>
    Float64Array.from({ length: rows }, (_unused, r) => entryOf(matrix, r, c)),
  )
  const turned = zeroMatrix(cols, cols)
  const basis = Array.from({ length: cols }, (_, c) => {
    const axis = turned.values.subarray(c * cols, (c + 1) * cols)
    axis[c] = 1
    return axis
  })
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    if (!sweepOnce(columns, basis)) break
  }
  const order = columns
    .map((column, c) => ({ value: Math.sqrt(dot(column, column)), vector: Array.from(basis[c] ?? []) }))
    .sort((a, b) => b.value - a.value)
  return { values: order.map((o) => o.value), vectors: order.map((o) => o.vector) }
}

function sweepOnce(columns: readonly Float64Array[], basis: readonly Float64Array[]): boolean {
  let turned = false
  columns.forEach((a, i) => {
    for (let j = i + 1; j < columns.length; j++) {
      const b = columns[j] ?? a
      const aa = dot(a, a)
      const bb = dot(b, b)
      const ab = dot(a, b)
      if (ab === 0 || Math.abs(ab) <= SQUARE_ENOUGH * Math.sqrt(aa * bb)) continue
      turned = true
      const zeta = (bb - aa) / (2 * ab)
      const tangent = (zeta >= 0 ? 1 : -1) / (Math.abs(zeta) + Math.hypot(1, zeta))
      const cosine = 1 / Math.hypot(1, tangent)
      turnPair(a, b, cosine, cosine * tangent)
      turnPair(basis[i] ?? a, basis[j] ?? b, cosine, cosine * tangent)
    }
  })
  return turned
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0)
  return sum
}

function turnPair(a: Float64Array, b: Float64Array, cosine: number, sine: number): void {
  for (let i = 0; i < a.length; i++) {
    const x = a[i] ?? 0
    const y = b[i] ?? 0
    a[i] = cosine * x - sine * y
    b[i] = sine * x + cosine * y
  }
}
