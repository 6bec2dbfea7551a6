import type { Isometry } from '../../core/geometry'
import { blankStationSlab, type Option, type Slab, type Table } from '../../core/plan'
import type { Command } from '../command'
import { itemById, patched, patchedList, withAdded, withOption, withSlab } from '../planEdits'
import { layFootprint } from './cutCommands'
import { setTableOutline } from './optionCommands'
import type { SlabFacts } from './slabCommands'

type Stock = Slab['stock']

/** How a slab was chosen: lengths by tape, flattening, drying, why it was rejected. */
export const setSlabStock: Command<{ readonly slabId: string; readonly stock: Partial<Stock> }> = {
  name: 'setSlabStock',
  history: 'step',
  apply: (plan, { slabId, stock }) =>
    withSlab(plan, slabId, (slab) => patchedList(slab, 'stock', patched(slab.stock, stock))),
}

/** A slab seen in the yard, with what was taped and read off its tag. */
export const addYardSlab: Command<{
  readonly slabId: string
  readonly name: string
  readonly facts: Partial<SlabFacts>
  readonly tape: Stock['tape']
}> = {
  name: 'addYardSlab',
  history: 'step',
  apply: (plan, { slabId, name, facts, tape }) => {
    const blank = blankStationSlab(slabId, name, null)
    const slab: Slab = { ...blank, ...facts, stock: { ...blank.stock, tape } }
    return { ...plan, slabs: withAdded(plan.slabs, slab, 'slab') }
  },
}

export const setCoverWishes: Command<{
  readonly optionId: string
  readonly cover: Partial<Option['cover']>
}> = {
  name: 'setCoverWishes',
  history: 'step',
  apply: (plan, { optionId, cover }) =>
    withOption(plan, optionId, (option) => patchedList(option, 'cover', patched(option.cover, cover))),
}

/** A size that a search has found, laid where it found it, in one step. */
export const takeTable: Command<{
  readonly optionId: string
  readonly slabId: string
  readonly outline: Table['outline']
  readonly pose: Isometry
}> = {
  name: 'takeTable',
  history: 'step',
  apply: (plan, { optionId, slabId, outline, pose }) => {
    itemById(plan.slabs, slabId, 'slab')
    return layFootprint.apply(setTableOutline.apply(plan, { optionId, outline }), { optionId, slabId, pose })
  },
}
