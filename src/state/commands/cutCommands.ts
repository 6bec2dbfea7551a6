import type { Isometry } from '../../core/geometry'
import { plainFootprintCuts, type Cut, type Option } from '../../core/plan'
import { InvariantError } from '../../core/units'
import type { Command } from '../command'
import { itemById, patched, patchedList, withAdded, withItem, withOption, withoutItem } from '../planEdits'

interface OptionAt {
  readonly optionId: string
}

type LineCut = Extract<Cut, { kind: 'line' }>

const hasFootprintCuts = (option: Option): boolean => option.cuts.some((cut) => cut.kind === 'footprint')

/** Lays the table on a slab, or moves it there. An option without footprint cuts gets its four. */
export const layFootprint: Command<OptionAt & { readonly slabId: string; readonly pose: Isometry }> = {
  name: 'layFootprint',
  history: 'step',
  apply: (plan, { optionId, slabId, pose }) => {
    itemById(plan.slabs, slabId, 'slab')
    return withOption(plan, optionId, (option) => {
      const laid = patched(option, { footprint: { slabId, pose } })
      return hasFootprintCuts(laid) ? laid : { ...laid, cuts: [...plainFootprintCuts(), ...laid.cuts] }
    })
  },
}

export const liftFootprint: Command<OptionAt> = {
  name: 'liftFootprint',
  history: 'step',
  apply: (plan, { optionId }) => withOption(plan, optionId, (option) => patched(option, { footprint: null })),
}

/** One saw, one kerf: for every cut of the option. */
export const setKerf: Command<OptionAt & { readonly kerfMm: number }> = {
  name: 'setKerf',
  history: 'step',
  apply: (plan, { optionId, kerfMm }) =>
    withOption(plan, optionId, (option) =>
      option.cuts.every((cut) => cut.kerfMm === kerfMm)
        ? option
        : { ...option, cuts: option.cuts.map((cut) => patched(cut, { kerfMm })) },
    ),
}

interface CutAt extends OptionAt {
  readonly cutId: string
}

/** Swaps a cut with the one before it; the first one stays first. */
export const moveCutEarlier: Command<CutAt> = {
  name: 'moveCutEarlier',
  history: 'step',
  apply: (plan, { optionId, cutId }) =>
    withOption(plan, optionId, (option) => {
      const cut = itemById(option.cuts, cutId, 'cut')
      const at = option.cuts.indexOf(cut)
      const before = option.cuts[at - 1]
      return before === undefined
        ? option
        : { ...option, cuts: option.cuts.with(at - 1, cut).with(at, before) }
    }),
}

export const addLineCut: Command<OptionAt & { readonly cut: LineCut }> = {
  name: 'addLineCut',
  history: 'step',
  apply: (plan, { optionId, cut }) =>
    withOption(plan, optionId, (option) => ({ ...option, cuts: withAdded(option.cuts, cut, 'cut') })),
}

const lineCut = (cut: Cut): LineCut => {
  if (cut.kind !== 'line') throw new InvariantError('a footprint cut follows the table', { id: cut.id })
  return cut
}

type LineCutFacts = Pick<LineCut, 'from' | 'to' | 'kerfMm' | 'wasteSide'>

export const setLineCut: Command<CutAt & { readonly changes: Partial<LineCutFacts> }> = {
  name: 'setLineCut',
  history: 'step',
  apply: (plan, { optionId, cutId, changes }) =>
    withOption(plan, optionId, (option) =>
      patchedList(
        option,
        'cuts',
        withItem<Cut>(option.cuts, cutId, 'cut', (cut) => patched(lineCut(cut), changes)),
      ),
    ),
}

export const removeLineCut: Command<CutAt> = {
  name: 'removeLineCut',
  history: 'step',
  apply: (plan, { optionId, cutId }) =>
    withOption(plan, optionId, (option) => {
      lineCut(itemById(option.cuts, cutId, 'cut'))
      return { ...option, cuts: withoutItem(option.cuts, cutId, 'cut') }
    }),
}
