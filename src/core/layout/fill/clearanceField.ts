import { type Bounds, type Region, type Ring, regionBounds } from '../../geometry'

/** Width of a cell, mm. Distances at the corners are exact and what lies between is read linearly. */
export const FIELD_STEP_MM = 3

/** Distances to one face on a part of the grid, mm; negative inside it. */
export interface FieldStamp {
  readonly column: number
  readonly row: number
  readonly columns: number
  readonly rows: number
  readonly mm: Float32Array
}

/** How far every place of the blank is from wood, mm, cut off at `reachMm`; negative in wood. */
export interface ClearanceField {
  readonly box: Bounds
  readonly columns: number
  readonly rows: number
  readonly reachMm: number
  readonly mm: Float32Array
}

/** As `numberAt` of edgeSet.ts, here so that it is inlined where modules are served one by one, too. */
const numberAt = (row: Float32Array, index: number): number => row[index] ?? 0

/** A field over a box without any wood yet. */
export function emptyField(box: Bounds, reachMm: number): ClearanceField {
  // One cell more than needed, so that the last place of the box still lies between four corners.
  const columns = Math.ceil((box.maxX - box.minX) / FIELD_STEP_MM) + 2
  const rows = Math.ceil((box.maxY - box.minY) / FIELD_STEP_MM) + 2
  return { box, columns, rows, reachMm, mm: new Float32Array(columns * rows).fill(reachMm) }
}

/** The same distances in a row of their own. */
export const copiedField = (field: ClearanceField): ClearanceField => ({ ...field, mm: field.mm.slice() })

/** Lowers the field to what a face leaves clear. */
export function lowerField(field: ClearanceField, stamp: FieldStamp): void {
  for (let row = 0; row < stamp.rows; row += 1) {
    let to = (stamp.row + row) * field.columns + stamp.column
    let from = row * stamp.columns
    for (let column = 0; column < stamp.columns; column += 1, to += 1, from += 1) {
      const mm = numberAt(stamp.mm, from)
      if (mm < numberAt(field.mm, to)) field.mm[to] = mm
    }
  }
}

/**
 * Distances to one face where it lies over the field or near it; null where it is too far away to matter.
 * Method: every edge writes its exact distance into the cells within reach; what lies inside changes its sign.
 */
export function fieldStamp(field: ClearanceField, region: Region): FieldStamp | null {
  const { box, reachMm } = field
  const { minX, minY, maxX, maxY } = regionBounds(region)
  const column = Math.max(0, Math.ceil((minX - reachMm - box.minX) / FIELD_STEP_MM))
  const row = Math.max(0, Math.ceil((minY - reachMm - box.minY) / FIELD_STEP_MM))
  const columns =
    Math.min(field.columns - 1, Math.floor((maxX + reachMm - box.minX) / FIELD_STEP_MM)) - column + 1
  const rows = Math.min(field.rows - 1, Math.floor((maxY + reachMm - box.minY) / FIELD_STEP_MM)) - row + 1
  if (columns <= 0 || rows <= 0) return null
  const mm = new Float32Array(columns * rows).fill(reachMm)
  const stamp: FieldStamp = { column, row, columns, rows, mm }
  const rings = [region.outer, ...region.holes]
  const originX = box.minX + column * FIELD_STEP_MM
  const originY = box.minY + row * FIELD_STEP_MM
  for (const ring of rings) stampRing(stamp, ring, originX, originY, reachMm)
  for (let r = 0; r < rows; r += 1) negateInside(stamp, rings, r, originX, originY + r * FIELD_STEP_MM)
  return stamp
}

function stampRing(stamp: FieldStamp, ring: Ring, originX: number, originY: number, reachMm: number): void {
  let previous = ring[ring.length - 1]
  for (const point of ring) {
    if (previous !== undefined) {
      stampEdge(
        stamp,
        previous[0] - originX,
        previous[1] - originY,
        point[0] - originX,
        point[1] - originY,
        reachMm,
      )
    }
    previous = point
  }
}

function stampEdge(
  { columns, rows, mm }: FieldStamp,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  reachMm: number,
): void {
  const [dx, dy] = [bx - ax, by - ay]
  const lengthSq = dx * dx + dy * dy
  const fromColumn = Math.max(0, Math.ceil((Math.min(ax, bx) - reachMm) / FIELD_STEP_MM))
  const toColumn = Math.min(columns - 1, Math.floor((Math.max(ax, bx) + reachMm) / FIELD_STEP_MM))
  const fromRow = Math.max(0, Math.ceil((Math.min(ay, by) - reachMm) / FIELD_STEP_MM))
  const toRow = Math.min(rows - 1, Math.floor((Math.max(ay, by) + reachMm) / FIELD_STEP_MM))
  for (let row = fromRow; row <= toRow; row += 1) {
    const y = row * FIELD_STEP_MM - ay
    for (let column = fromColumn; column <= toColumn; column += 1) {
      const x = column * FIELD_STEP_MM - ax
      const along = lengthSq > 0 ? Math.min(1, Math.max(0, (x * dx + y * dy) / lengthSq)) : 0
      const [ox, oy] = [x - along * dx, y - along * dy]
      const index = row * columns + column
      const old = numberAt(mm, index)
      const distanceSq = ox * ox + oy * oy
      if (distanceSq < old * old) mm[index] = Math.sqrt(distanceSq)
    }
  }
}

/** Even-odd along one row of cells. */
function negateInside(
  { columns, mm }: FieldStamp,
  rings: readonly Ring[],
  row: number,
  originX: number,
  y: number,
): void {
  const crossings: number[] = []
  for (const ring of rings) {
    let previous = ring[ring.length - 1]
    for (const point of ring) {
      if (previous !== undefined && previous[1] <= y !== point[1] <= y) {
        const share = (y - previous[1]) / (point[1] - previous[1])
        crossings.push(previous[0] + share * (point[0] - previous[0]))
      }
      previous = point
    }
  }
  crossings.sort((a, b) => a - b)
  for (let pair = 0; pair + 1 < crossings.length; pair += 2) {
    const from = Math.max(0, Math.ceil(((crossings[pair] ?? 0) - originX) / FIELD_STEP_MM))
    const to = Math.min(columns - 1, Math.floor(((crossings[pair + 1] ?? 0) - originX) / FIELD_STEP_MM))
    for (let column = from; column <= to; column += 1) {
      const index = row * columns + column
      mm[index] = -numberAt(mm, index)
    }
  }
}
