import { tablePoint } from '../../core/geometry'
import type { Option, Plan, Slab, Table } from '../../core/plan'
import type { Command } from '../command'
import { itemById, patched, patchedList, withAdded, withOption, withSlab } from '../planEdits'

interface OptionAt {
  readonly optionId: string
}

export const setSlabWood: Command<{ readonly slabId: string; readonly wood: Partial<Slab['wood']> }> = {
  name: 'setSlabWood',
  history: 'step',
  apply: (plan, { slabId, wood }) =>
    withSlab(plan, slabId, (slab) => patchedList(slab, 'wood', patched(slab.wood, wood))),
}

/** The air that the table will live in. */
export const setRoom: Command<OptionAt & { readonly room: Partial<Option['room']> }> = {
  name: 'setRoom',
  history: 'step',
  apply: (plan, { optionId, room }) =>
    withOption(plan, optionId, (option) => patchedList(option, 'room', patched(option.room, room))),
}

export const setForm: Command<OptionAt & { readonly form: Partial<Option['form']> }> = {
  name: 'setForm',
  history: 'step',
  apply: (plan, { optionId, form }) =>
    withOption(plan, optionId, (option) => patchedList(option, 'form', patched(option.form, form))),
}

export const setStanding: Command<OptionAt & { readonly standing: Partial<Option['standing']> }> = {
  name: 'setStanding',
  history: 'step',
  apply: (plan, { optionId, standing }) =>
    withOption(plan, optionId, (option) =>
      patchedList(option, 'standing', patched(option.standing, standing)),
    ),
}

/** What one option costs besides what is worked out. */
export const setCosts: Command<OptionAt & { readonly costs: Partial<Option['quote']> }> = {
  name: 'setCosts',
  history: 'step',
  apply: (plan, { optionId, costs }) =>
    withOption(plan, optionId, (option) => patchedList(option, 'quote', patched(option.quote, costs))),
}

/** Rates, terms and way of working, for all options. */
export const setShop: Command<{ readonly shop: Partial<Plan['shop']> }> = {
  name: 'setShop',
  history: 'step',
  apply: (plan, { shop }) => patchedList(plan, 'shop', patched(plan.shop, shop)),
}

type Outline = Table['outline']

function longer(outline: Outline, byMm: number): Outline {
  if (outline.kind !== 'free') return { ...outline, lengthMm: outline.lengthMm + byMm }
  const lengthMm = Math.max(...outline.ring.map(([xMm]) => xMm))
  const factor = (lengthMm + byMm) / lengthMm
  return { ...outline, ring: outline.ring.map(([xMm, yMm]) => tablePoint(xMm * factor, yMm)) }
}

/** A copy of an option whose table is longer (or, below zero, shorter), to set its price beside the other's. */
export const addLongerOption: Command<
  OptionAt & { readonly copyOf: string; readonly name: string; readonly byMm: number }
> = {
  name: 'addLongerOption',
  history: 'step',
  apply: (plan, { optionId, copyOf, name, byMm }) => {
    const from = itemById(plan.options, copyOf, 'option')
    const table = { ...from.table, outline: longer(from.table.outline, byMm) }
    return {
      ...plan,
      options: withAdded(plan.options, { ...from, id: optionId, name, table }, 'option'),
    }
  },
}
