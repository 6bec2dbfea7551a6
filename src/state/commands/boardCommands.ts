import type { PxPoint } from '../../core/geometry'
import { defaultNames, type Slab } from '../../core/plan'
import { InvariantError } from '../../core/units'
import type { Command } from '../command'
import { itemById, patched, patchedList, withAdded, withItem, withPhoto, withSlab } from '../planEdits'
import { clickedAt } from './clickedAt'
import { withoutMarks } from './markCommands'
import { withDatumFromMarks } from './withDatumFromMarks'

type Board = Slab['boards'][number]
type FourOf<T> = readonly [T, T, T, T]

interface BoardSize {
  readonly lengthMm: number
  readonly widthMm: number
  readonly thicknessMm: number
  readonly name: string
}

/** A rectangle of known size lying on the slab: four marks that stand as high as it is thick. Corner 1–2 is its length. */
export const layBoard: Command<
  BoardSize & {
    readonly slabId: string
    readonly photoId: string
    readonly boardId: string
    readonly markIds: FourOf<string>
    readonly cornersPx: FourOf<PxPoint>
    /** How well the hand could aim, photo px. */
    readonly sdPx?: number
  }
> = {
  name: 'layBoard',
  history: 'step',
  apply: (plan, args) =>
    withSlab(plan, args.slabId, (slab) => {
      const board = {
        id: args.boardId,
        name: args.name,
        cornerIds: args.markIds,
        lengthMm: args.lengthMm,
        widthMm: args.widthMm,
      }
      const corners = args.markIds.map((id, n) => ({
        id,
        name: defaultNames.boardCorner(args.name, n + 1),
        heightMm: args.thicknessMm,
      }))
      const marks = corners.reduce((list, mark) => withAdded(list, mark, 'mark'), slab.marks)
      const seen = args.cornersPx.flatMap((atPx, n) => {
        const markId = args.markIds[n]
        return markId === undefined ? [] : [clickedAt(markId, atPx, args.sdPx)]
      })
      const laid = { ...slab, marks, boards: withAdded(slab.boards, board, 'board') }
      return withDatumFromMarks(
        withPhoto(laid, args.photoId, (photo) => ({
          ...photo,
          observations: [...photo.observations, ...seen],
        })),
      )
    }),
}

const cornersOf = (slab: Slab, boardId: string): Board['cornerIds'] =>
  itemById(slab.boards, boardId, 'board').cornerIds

/** Size, thickness or name of a board that lies there already. A new thickness is the new height of its corners. */
export const setBoard: Command<Partial<BoardSize> & { readonly slabId: string; readonly boardId: string }> = {
  name: 'setBoard',
  history: 'step',
  apply: (plan, { slabId, boardId, thicknessMm, ...changes }) =>
    withSlab(plan, slabId, (slab) => {
      const corners = new Set(cornersOf(slab, boardId))
      if (corners.size !== 4) throw new InvariantError('a board has four corners', { boardId })
      const boards = withItem(slab.boards, boardId, 'board', (board) => patched(board, changes))
      const isRaised = slab.marks.some((mark) => corners.has(mark.id) && mark.heightMm !== thicknessMm)
      const marks =
        thicknessMm === undefined || !isRaised
          ? slab.marks
          : slab.marks.map((mark) => (corners.has(mark.id) ? patched(mark, { heightMm: thicknessMm }) : mark))
      return patchedList(patchedList(slab, 'boards', boards), 'marks', marks)
    }),
}

/** Its four corner marks go with it. */
export const removeBoard: Command<{ readonly slabId: string; readonly boardId: string }> = {
  name: 'removeBoard',
  history: 'step',
  apply: (plan, { slabId, boardId }) =>
    withSlab(plan, slabId, (slab) => {
      const rest = withoutMarks(slab, cornersOf(slab, boardId))
      return { ...rest, boards: rest.boards.filter((board) => board.id !== boardId) }
    }),
}
