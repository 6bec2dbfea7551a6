import {
  applyIsometry,
  type Isometry,
  type Ring,
  ringBounds,
  slabPoint,
  type TablePoint,
  tablePoint,
} from '../geometry'
import { assertNever } from '../units'
import type { NamedCut } from '../cuts'
import type { Cut, Option, TableSideName } from './schema'

export interface NamedCutsInput {
  readonly cuts: Option['cuts']
  readonly pieces: Option['pieces']
  readonly sides: Option['table']['sides']
  readonly footprint: { readonly blank: Ring<TablePoint> }
  readonly pose: Isometry
}

/**
 * The option's cuts as lines on the slab, in order. A cut along a side of the blank is walked so that the table lies on
 * the right, so its waste is on the left (the other way round for a table that is turned over); a kept side is not cut.
 * @returns each cut with its line; cuts that name an unknown piece are left out (reported elsewhere)
 */
export function namedCuts({ cuts, pieces, sides, footprint, pose }: NamedCutsInput): readonly NamedCut[] {
  return cuts.flatMap((cut) => {
    switch (cut.kind) {
      case 'footprint':
        return sides[cut.side].finish === 'live' ? [] : [alongSide(cut, footprint.blank, pose)]
      case 'line':
        return alongLine(cut, pieces)
      default:
        return assertNever(cut)
    }
  })
}

function alongSide(
  cut: Extract<Cut, { kind: 'footprint' }>,
  blank: Ring<TablePoint>,
  pose: Isometry,
): NamedCut {
  const [from, to] = sideEnds(blank, cut.side)
  return {
    id: cut.id,
    line: { from: applyIsometry(pose, from, slabPoint), to: applyIsometry(pose, to, slabPoint) },
    kerfMm: cut.kerfMm,
    wasteSide: pose.turnedOver ? 'right' : 'left',
    divides: { kind: 'in-hand' },
  }
}

/** One side of the blank, walked with the table on the right. */
function sideEnds(blank: Ring<TablePoint>, side: TableSideName): readonly [TablePoint, TablePoint] {
  const { minX, minY, maxX, maxY } = ringBounds(blank)
  switch (side) {
    case 'far':
      return [tablePoint(minX, minY), tablePoint(maxX, minY)]
    case 'end':
      return [tablePoint(maxX, minY), tablePoint(maxX, maxY)]
    case 'near':
      return [tablePoint(maxX, maxY), tablePoint(minX, maxY)]
    case 'start':
      return [tablePoint(minX, maxY), tablePoint(minX, minY)]
    default:
      return assertNever(side)
  }
}

function alongLine(cut: Extract<Cut, { kind: 'line' }>, pieces: Option['pieces']): readonly NamedCut[] {
  const piece = pieces.find(({ id }) => id === cut.pieceId)
  if (piece === undefined) return []
  return [
    {
      id: cut.id,
      line: { from: cut.from, to: cut.to },
      kerfMm: cut.kerfMm,
      wasteSide: cut.wasteSide,
      divides: { kind: 'piece', anchor: piece.anchor },
    },
  ]
}
