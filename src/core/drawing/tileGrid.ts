import { InvariantError } from '../units'
import type { Bounds } from '../geometry'

/** One page's share of a drawing in true size. */
export interface Tile {
  readonly column: number
  readonly row: number
  /** Place of the drawing that lies in the tile's top-left corner, mm. */
  readonly leftMm: number
  readonly topMm: number
}

/**
 * Tiles that lie over one another along their edges and hold a drawing between them.
 * @param bounds     what is to be held, mm
 * @param tile       size of a tile, mm
 * @param overlapMm  how far neighbours lie over each other
 * @returns tiles row by row; the last of a row may reach past the bounds
 * @throws InvariantError when the tile is no larger than the overlap
 * Rules: DRW-14.
 */
export function tileGrid(
  bounds: Bounds,
  tile: { readonly widthMm: number; readonly heightMm: number },
  overlapMm: number,
): readonly Tile[] {
  const [stepX, stepY] = [tile.widthMm - overlapMm, tile.heightMm - overlapMm]
  if (!(stepX > 0 && stepY > 0)) {
    throw new InvariantError('a tile must be larger than its overlap', { ...tile, overlapMm })
  }
  const countOf = (extentMm: number, stepMm: number): number =>
    Math.max(1, Math.ceil((extentMm - overlapMm) / stepMm))
  const columns = countOf(bounds.maxX - bounds.minX, stepX)
  const rows = countOf(bounds.maxY - bounds.minY, stepY)
  return Array.from({ length: columns * rows }, (_, k) => {
    const [column, row] = [k % columns, Math.floor(k / columns)]
    return { column, row, leftMm: bounds.minX + column * stepX, topMm: bounds.minY + row * stepY }
  })
}
