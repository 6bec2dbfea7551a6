import type { Option } from '../../core/plan'
import { kept, patchedList } from '../planEdits'

/** The option without the named pieces that match; their placements and the cuts that divide them go with them. */
export function withoutPieces(option: Option, isGone: (piece: Option['pieces'][number]) => boolean): Option {
  const gone = new Set(option.pieces.filter(isGone).map((piece) => piece.id))
  if (gone.size === 0) return option
  return {
    ...option,
    pieces: kept(option.pieces, (piece) => !gone.has(piece.id)),
    placements: kept(option.placements, (placement) => !gone.has(placement.pieceId)),
    ...patchedList(
      { cuts: option.cuts },
      'cuts',
      kept(option.cuts, (cut) => cut.kind !== 'line' || !gone.has(cut.pieceId)),
    ),
  }
}
