import { meanClamped } from './areaKernel'
import type { EdgeSet } from './edgeSet'

import type { TableBand } from './poseWorth'

/** As `numberAt` of edgeSet.ts, here so that it is inlined where modules are served one by one, too. */
const numberAt = (row: Float64Array, index: number): number => row[index] ?? 0

/** A band with what wood in it is worth. */
export interface RasterBand {
  readonly band: TableBand
  readonly weight: number
}

/** Where the raster lies in the turned axes, mm. */
export interface RasterFrame {
  readonly minU: number
  readonly minV: number
  readonly columns: number
  readonly rows: number
  readonly cellMm: number
}

/**
 * Exact wood in each cell of a grid that is turned with the table, summed up, so that the wood in any upright rectangle
 * takes four look-ups. Between grid lines the wood of a cell is taken as even.
 */
export class CoverageRaster {
  readonly frame: RasterFrame
  /** Wood, in cells, over all cells before column i and row j. */
  readonly #sums: Float64Array
  readonly #rows: Float64Array

  /** @param frame grid that holds all wood of the edges */
  constructor(edges: EdgeSet, angleRad: number, frame: RasterFrame) {
    this.frame = frame
    const { columns, rows } = frame
    this.#sums = new Float64Array((columns + 1) * (rows + 1))
    this.#rows = new Float64Array(columns * (rows + 1))
    this.#addEdges(edges, angleRad)
    this.#sumUp()
  }

  /** Row j + 1 of column i + 1 first collects what cell (i, j) gets from edges through it or above it. */
  #addEdges(edges: EdgeSet, angleRad: number): void {
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
    const { minU, minV, cellMm } = this.frame
    const { ax, ay, bx, by, count } = edges
    for (let i = 0; i < count; i += 1) {
      const u1 = (numberAt(ax, i) * cos + numberAt(ay, i) * sin - minU) / cellMm
      const v1 = (numberAt(ay, i) * cos - numberAt(ax, i) * sin - minV) / cellMm
      const u2 = (numberAt(bx, i) * cos + numberAt(by, i) * sin - minU) / cellMm
      const v2 = (numberAt(by, i) * cos - numberAt(bx, i) * sin - minV) / cellMm
      if (u1 < u2) this.#addEdge(u1, v1, u2, v2, -1)
      else this.#addEdge(u2, v2, u1, v1, 1)
    }
  }

  #addEdge(u1: number, v1: number, u2: number, v2: number, sign: number): void {
    if (u2 - u1 < 1e-12) return
    const slope = (v2 - v1) / (u2 - u1)
    const last = Math.min(this.frame.columns - 1, Math.floor(u2))
    for (let column = Math.max(0, Math.floor(u1)); column <= last; column += 1) {
      const from = Math.max(u1, column)
      const to = Math.min(u2, column + 1)
      if (to <= from) continue
      const vFrom = v1 + slope * (from - u1)
      this.#addPiece(column, vFrom, v1 + slope * (to - u1), sign * (to - from))
    }
  }

  /** A piece of edge within one column: cells below it in v are whole, those it runs through in part. */
  #addPiece(column: number, vFrom: number, vTo: number, weight: number): void {
    const first = Math.max(0, Math.floor(Math.min(vFrom, vTo)))
    const last = Math.min(this.frame.rows - 1, Math.floor(Math.max(vFrom, vTo)))
    const at = (column + 1) * (this.frame.rows + 1) + 1
    for (let row = 0; row < first; row += 1) this.#sums[at + row] = numberAt(this.#sums, at + row) + weight
    for (let row = first; row <= last; row += 1) {
      const share = meanClamped(vFrom - row - 0.5, vTo - row - 0.5, 0.5) + 0.5
      this.#sums[at + row] = numberAt(this.#sums, at + row) + weight * share
    }
  }

  #sumUp(): void {
    const { columns, rows } = this.frame
    const sums = this.#sums
    for (let i = 1; i <= columns; i += 1) {
      const at = i * (rows + 1)
      let inColumn = 0
      for (let j = 1; j <= rows; j += 1) {
        inColumn += numberAt(sums, at + j)
        sums[at + j] = numberAt(sums, at - rows - 1 + j) + inColumn
      }
    }
  }

  /**
   * Adds weight × wood of a band, in cells, for each place of the table's middle: the corner of cell (i, j) is at
   * places[i · rows + j]. Differences along u first, then along v.
   */
  addBand(places: Float64Array, { band, weight }: RasterBand): void {
    const { columns, rows, cellMm } = this.frame
    const inner = this.#rows
    const end = lookUp((band.alongMm + band.halfLengthMm) / cellMm)
    const start = lookUp((band.alongMm - band.halfLengthMm) / cellMm)
    for (let i = 0; i < columns; i += 1) {
      const [e0, e1] = [this.#columnAt(i + end.whole), this.#columnAt(i + end.whole + 1)]
      const [s0, s1] = [this.#columnAt(i + start.whole), this.#columnAt(i + start.whole + 1)]
      for (let j = 0; j <= rows; j += 1) {
        const atEnd = this.#sum(e0 + j) * (1 - end.part) + this.#sum(e1 + j) * end.part
        inner[i * (rows + 1) + j] =
          atEnd - this.#sum(s0 + j) * (1 - start.part) - this.#sum(s1 + j) * start.part
      }
    }
    const near = lookUp((band.acrossMm + band.halfWidthMm) / cellMm)
    const far = lookUp((band.acrossMm - band.halfWidthMm) / cellMm)
    for (let i = 0; i < columns; i += 1) {
      for (let j = 0; j < rows; j += 1) {
        const worth = this.#between(i, j + near.whole, near.part) - this.#between(i, j + far.whole, far.part)
        places[i * rows + j] = numberAt(places, i * rows + j) + weight * worth
      }
    }
  }

  #sum(at: number): number {
    return numberAt(this.#sums, at)
  }

  #columnAt(column: number): number {
    return Math.min(this.frame.columns, Math.max(0, column)) * (this.frame.rows + 1)
  }

  #between(column: number, row: number, part: number): number {
    const { rows } = this.frame
    const at = column * (rows + 1)
    const low = numberAt(this.#rows, at + Math.min(rows, Math.max(0, row)))
    const high = numberAt(this.#rows, at + Math.min(rows, Math.max(0, row + 1)))
    return low * (1 - part) + high * part
  }
}

const lookUp = (cells: number): { readonly whole: number; readonly part: number } => {
  const whole = Math.floor(cells)
  return { whole, part: cells - whole }
}
