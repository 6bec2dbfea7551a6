import {
  blankOption,
  defaultNames,
  type Option,
  type Plan,
  type Table,
  type TableSideName,
} from '../../core/plan'
import type { Command } from '../command'
import { itemById, patched, patchedList, withAdded, withOption, withoutItem } from '../planEdits'

interface OptionAt {
  readonly optionId: string
}

const freeOptionName = (plan: Plan): string => {
  let number = plan.options.length + 1
  while (plan.options.some((option) => option.name === defaultNames.option(number))) number++
  return defaultNames.option(number)
}

/** A blank option, or a copy of another one to try something else with. */
export const addOption: Command<OptionAt & { readonly copyOf: string | null; readonly name?: string }> = {
  name: 'addOption',
  history: 'step',
  apply: (plan, { optionId, copyOf, name }) => {
    const label = name ?? freeOptionName(plan)
    const option: Option =
      copyOf === null
        ? blankOption(optionId, label)
        : { ...itemById(plan.options, copyOf, 'option'), id: optionId, name: label }
    return { ...plan, options: withAdded(plan.options, option, 'option') }
  },
}

export const renameOption: Command<OptionAt & { readonly name: string }> = {
  name: 'renameOption',
  history: 'step',
  apply: (plan, { optionId, name }) => withOption(plan, optionId, (option) => patched(option, { name })),
}

export const removeOption: Command<OptionAt> = {
  name: 'removeOption',
  history: 'step',
  apply: (plan, { optionId }) => ({ ...plan, options: withoutItem(plan.options, optionId, 'option') }),
}

const withTable = (plan: Plan, optionId: string, edit: (table: Table) => Table): Plan =>
  withOption(plan, optionId, (option) => patchedList(option, 'table', edit(option.table)))

export const setTableOutline: Command<OptionAt & { readonly outline: Table['outline'] }> = {
  name: 'setTableOutline',
  history: 'step',
  apply: (plan, { optionId, outline }) => withTable(plan, optionId, (table) => patched(table, { outline })),
}

export const setTableThickness: Command<OptionAt & { readonly thicknessMm: number }> = {
  name: 'setTableThickness',
  history: 'step',
  apply: (plan, { optionId, thicknessMm }) =>
    withTable(plan, optionId, (table) => patched(table, { thicknessMm })),
}

type TableSide = Table['sides'][TableSideName]

export const setTableSide: Command<OptionAt & { readonly side: TableSideName } & Partial<TableSide>> = {
  name: 'setTableSide',
  history: 'step',
  apply: (plan, { optionId, side, ...changes }) =>
    withTable(plan, optionId, (table) => {
      const after = patched(table.sides[side], changes)
      return after === table.sides[side] ? table : { ...table, sides: { ...table.sides, [side]: after } }
    }),
}

export const setResin: Command<OptionAt & { readonly resin: Partial<Option['resin']> }> = {
  name: 'setResin',
  history: 'step',
  apply: (plan, { optionId, resin }) =>
    withOption(plan, optionId, (option) => patchedList(option, 'resin', patched(option.resin, resin))),
}

export const setLeastJoint: Command<OptionAt & { readonly leastJointMm: number }> = {
  name: 'setLeastJoint',
  history: 'step',
  apply: (plan, { optionId, leastJointMm }) =>
    withOption(plan, optionId, (option) => patched(option, { leastJointMm })),
}
