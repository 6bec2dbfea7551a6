import type { TableSideName } from '../../schema'

const SIDES: Readonly<Record<TableSideName, string>> = {
  start: 'start',
  end: 'end',
  far: 'far side',
  near: 'near side',
}

/** What the hollows of a cast and the pieces of wood in it are called, on screen and on paper. */
export const pourWords = {
  gapAtSide: (side: TableSideName, number: number) => `gap ${number} at the ${SIDES[side]}`,
  joint: (number: number) => `joint ${number}`,
  void: (number: number) => `void ${number}`,
  overWood: 'over the wood',
  underWood: 'under the wood',
  alongForm: 'along the form',
  slab: 'the slab',
  slabPart: (number: number) => `part ${number} of the slab`,
} as const
