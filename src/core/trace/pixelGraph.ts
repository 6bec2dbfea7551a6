import type { Features } from './features'

const OFFSETS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
] as const

/** The part of a cut graph that does not change from stroke to stroke. */
export interface PixelGraph {
  readonly neighbours: Int32Array
  readonly capacities: Float32Array
}

/** Mean squared difference of neighbours' colours. */
function meanContrast({ rows, widthPx, heightPx, dimensions: n }: Features): number {
  let sum = 0
  for (let y = 0; y < heightPx - 1; y++) {
    for (let x = 0; x < widthPx - 1; x++) {
      const at = (y * widthPx + x) * n
      for (let c = 0; c < 3; c++) {
        sum += ((rows[at + c] ?? 0) - (rows[at + n + c] ?? 0)) ** 2
        sum += ((rows[at + c] ?? 0) - (rows[at + widthPx * n + c] ?? 0)) ** 2
      }
    }
  }
  return sum / (2 * (widthPx - 1) * (heightPx - 1))
}

/**
 * Neighbouring pixels hang together by how alike their colours are: w = smoothness · exp(−d² / 2d̄²) / distance
 * (Boykov and Jolly, ICCV 2001), d̄² the picture's mean. Yields between the directions.
 */
export function* pixelGraph(features: Features, smoothness: number): Generator<void, PixelGraph> {
  const { widthPx, heightPx, rows, dimensions } = features
  const neighbours = new Int32Array(widthPx * heightPx * 8).fill(-1)
  const capacities = new Float32Array(widthPx * heightPx * 8)
  yield
  const beta = 1 / (2 * Math.max(1e-3, meanContrast(features)))
  for (const [k, [dx, dy]] of OFFSETS.entries()) {
    const full = smoothness / (k < 4 ? 1 : Math.SQRT2)
    for (let y = Math.max(0, -dy); y < heightPx - Math.max(0, dy); y++) {
      for (let x = Math.max(0, -dx); x < widthPx - Math.max(0, dx); x++) {
        const at = y * widthPx + x
        const other = (y + dy) * widthPx + x + dx
        let contrast = 0
        for (let c = 0; c < 3; c++) {
          contrast += ((rows[at * dimensions + c] ?? 0) - (rows[other * dimensions + c] ?? 0)) ** 2
        }
        neighbours[at * 8 + k] = other
        capacities[at * 8 + k] = full * Math.exp(-beta * contrast)
      }
    }
    yield
  }
  return { neighbours, capacities }
}
