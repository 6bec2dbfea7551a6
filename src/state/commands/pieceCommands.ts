import type { Isometry, SlabPoint } from '../../core/geometry'
import type { Command } from '../command'
import { itemById, patched, patchedList, withAdded, withItem, withOption, withoutItem } from '../planEdits'
import { withoutPieces } from './withoutPieces'

interface PieceAt {
  readonly optionId: string
  readonly pieceId: string
}

/** Names a piece of the slab by a point well inside it. */
export const pickPiece: Command<
  PieceAt & { readonly name: string; readonly slabId: string; readonly anchor: SlabPoint }
> = {
  name: 'pickPiece',
  history: 'step',
  apply: (plan, { optionId, pieceId, name, slabId, anchor }) => {
    itemById(plan.slabs, slabId, 'slab')
    return withOption(plan, optionId, (option) => ({
      ...option,
      pieces: withAdded(option.pieces, { id: pieceId, name, slabId, anchor }, 'piece'),
    }))
  },
}

export const renamePiece: Command<PieceAt & { readonly name: string }> = {
  name: 'renamePiece',
  history: 'step',
  apply: (plan, { optionId, pieceId, name }) =>
    withOption(plan, optionId, (option) =>
      patchedList(
        option,
        'pieces',
        withItem(option.pieces, pieceId, 'piece', (piece) => patched(piece, { name })),
      ),
    ),
}

/** The piece is no longer named: its placements and the cuts that divide it go too. */
export const dropPiece: Command<PieceAt> = {
  name: 'dropPiece',
  history: 'step',
  apply: (plan, { optionId, pieceId }) =>
    withOption(plan, optionId, (option) => {
      itemById(option.pieces, pieceId, 'piece')
      return withoutPieces(option, (piece) => piece.id === pieceId)
    }),
}

interface PlacementAt {
  readonly optionId: string
  readonly placementId: string
}

/** Names a piece, unless the option has it already, and lays it on the table: one step. */
export const layPiece: Command<
  PlacementAt & {
    readonly slabId: string
    readonly piece: { readonly id: string; readonly name: string; readonly anchor: SlabPoint }
    readonly pose: Isometry
  }
> = {
  name: 'layPiece',
  history: 'step',
  apply: (plan, { optionId, placementId, slabId, piece, pose }) => {
    const isNamed = itemById(plan.options, optionId, 'option').pieces.some(({ id }) => id === piece.id)
    const { id: pieceId, name, anchor } = piece
    const named = isNamed ? plan : pickPiece.apply(plan, { optionId, pieceId, name, slabId, anchor })
    return placePiece.apply(named, { optionId, placementId, pieceId, pose })
  },
}

/** Lays a named piece on the table. `pose` is that of the slab frame in the table frame. */
export const placePiece: Command<PlacementAt & { readonly pieceId: string; readonly pose: Isometry }> = {
  name: 'placePiece',
  history: 'step',
  apply: (plan, { optionId, placementId, pieceId, pose }) =>
    withOption(plan, optionId, (option) => {
      itemById(option.pieces, pieceId, 'piece')
      const placement = { id: placementId, pieceId, pose }
      return { ...option, placements: withAdded(option.placements, placement, 'placement') }
    }),
}

export const movePlacement: Command<PlacementAt & { readonly pose: Isometry }> = {
  name: 'movePlacement',
  history: 'step',
  apply: (plan, { optionId, placementId, pose }) =>
    withOption(plan, optionId, (option) =>
      patchedList(
        option,
        'placements',
        withItem(option.placements, placementId, 'placement', (placement) => patched(placement, { pose })),
      ),
    ),
}

export const removePlacement: Command<PlacementAt> = {
  name: 'removePlacement',
  history: 'step',
  apply: (plan, { optionId, placementId }) =>
    withOption(plan, optionId, (option) => ({
      ...option,
      placements: withoutItem(option.placements, placementId, 'placement'),
    })),
}
