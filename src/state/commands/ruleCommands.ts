import type { PxPoint } from '../../core/geometry'
import { defaultNames, type Slab } from '../../core/plan'
import type { Command } from '../command'
import { itemById, patched, patchedList, withAdded, withItem, withPhoto, withSlab } from '../planEdits'
import { clickedAt } from './clickedAt'
import { withoutMarks } from './markCommands'
import { withDatumFromMarks } from './withDatumFromMarks'

interface RuleSize {
  readonly lengthMm: number
  readonly thicknessMm: number
  readonly name: string
}

/** A rule or batten lying on the slab: two marks at its ends that stand as high as it is thick. */
export const layRule: Command<
  RuleSize & {
    readonly slabId: string
    readonly photoId: string
    readonly ruleId: string
    readonly markIds: readonly [string, string]
    readonly endsPx: readonly [PxPoint, PxPoint]
    /** How well the hand could aim, photo px. */
    readonly sdPx?: number
  }
> = {
  name: 'layRule',
  history: 'step',
  apply: (plan, args) =>
    withSlab(plan, args.slabId, (slab) => {
      const rule = { id: args.ruleId, name: args.name, endIds: args.markIds, lengthMm: args.lengthMm }
      const ends = args.markIds.map((id, n) => ({
        id,
        name: defaultNames.ruleEnd(args.name, n + 1),
        heightMm: args.thicknessMm,
      }))
      const marks = ends.reduce((list, mark) => withAdded(list, mark, 'mark'), slab.marks)
      const laid = { ...slab, marks, rules: withAdded(slab.rules, rule, 'rule') }
      const seen = args.endsPx.flatMap((atPx, n) => {
        const markId = args.markIds[n]
        return markId === undefined ? [] : [clickedAt(markId, atPx, args.sdPx)]
      })
      return withDatumFromMarks(
        withPhoto(laid, args.photoId, (photo) => ({
          ...photo,
          observations: [...photo.observations, ...seen],
        })),
      )
    }),
}

const endsOf = (slab: Slab, ruleId: string): readonly string[] => itemById(slab.rules, ruleId, 'rule').endIds

/** Length, thickness or name of a rule that lies there already. A new thickness is the new height of its ends. */
export const setRule: Command<Partial<RuleSize> & { readonly slabId: string; readonly ruleId: string }> = {
  name: 'setRule',
  history: 'step',
  apply: (plan, { slabId, ruleId, thicknessMm, ...changes }) =>
    withSlab(plan, slabId, (slab) => {
      const ends = endsOf(slab, ruleId)
      const rules = withItem(slab.rules, ruleId, 'rule', (rule) => patched(rule, changes))
      const isRaised =
        thicknessMm !== undefined &&
        slab.marks.some((mark) => ends.includes(mark.id) && mark.heightMm !== thicknessMm)
      const marks = isRaised
        ? slab.marks.map((mark) => (ends.includes(mark.id) ? patched(mark, { heightMm: thicknessMm }) : mark))
        : slab.marks
      return patchedList(patchedList(slab, 'rules', rules), 'marks', marks)
    }),
}

/** Its two end marks go with it. */
export const removeRule: Command<{ readonly slabId: string; readonly ruleId: string }> = {
  name: 'removeRule',
  history: 'step',
  apply: (plan, { slabId, ruleId }) =>
    withSlab(plan, slabId, (slab) => withoutMarks(slab, endsOf(slab, ruleId))),
}
