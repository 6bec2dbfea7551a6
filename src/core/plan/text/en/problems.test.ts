import { describe, expect, it } from 'vitest'
import { describeProblem } from '../../describeProblem'
import { REPAIR_RULES } from '../../recovery/repairRules'
import { problemTexts } from './problems'

describe('problemTexts', () => {
  it('has a sentence for everything that mending a plan can lose', () => {
    const codes = [...REPAIR_RULES.values()].flatMap(({ code }) => code ?? [])
    expect(codes.length).toBeGreaterThan(20)
    expect(codes.filter((code) => !(code in problemTexts))).toEqual([])
  })

  it('names every field that mending a plan can reset', () => {
    const fields = [...REPAIR_RULES].flatMap(([pattern, { code }]) =>
      code === undefined ? (pattern.split('/').at(-1) ?? []) : [],
    )
    expect(fields.length).toBeGreaterThan(20)
    for (const field of fields) {
      const sentence = describeProblem(
        { code: 'reset-value', values: { field, owner: 'Slab 1' } },
        { system: 'mm' },
      )
      // A field that has no words of its own would show its raw name.
      expect(sentence).not.toMatch(/[a-z][A-Z]|Mm|Cents/)
    }
  })

  it('says which version a newer plan has, and which the program reads', () => {
    const problem = { code: 'plan-newer-version', values: { version: 7, readable: 3 } }
    expect(describeProblem(problem, { system: 'mm' })).toMatch(/7.*3/)
  })
})
