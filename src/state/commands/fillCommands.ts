import { type Option, withFillProposal } from '../../core/plan'
import { InvariantError } from '../../core/units'
import type { Command } from '../command'
import { itemById, withOption } from '../planEdits'

type Pieces = Parameters<typeof withFillProposal>[2]['pieces']

interface Args {
  readonly optionId: string
  /** The slab that the pieces are cut from. */
  readonly slabId: string
  readonly pieces: Pieces
  /** Fresh ids, enough for `idsForPieces`. */
  readonly ids: readonly string[]
}

/** How many ids pieces need at most: a name, a placement and the cuts of each. */
export const idsForPieces = (pieces: Pieces): number =>
  pieces.reduce((sum, { cuts }) => sum + 2 + cuts.length, 0)

/** Takes up what a fill search proposes: names, cuts and placements of all its pieces, in one step. */
export const keepFill: Command<Args> = {
  name: 'keepFill',
  history: 'step',
  apply: (plan, { optionId, slabId, pieces, ids }) => {
    itemById(plan.slabs, slabId, 'slab')
    let taken = 0
    const makeId = (): string => {
      const id = ids[taken]
      if (id === undefined) throw new InvariantError('too few ids for the pieces', { given: ids.length })
      taken += 1
      return id
    }
    return withOption(plan, optionId, (option): Option =>
      withFillProposal(option, slabId, { pieces }, makeId),
    )
  },
}
