import { describe, expect, it } from 'vitest'
import { parseLengthWithin, parseMoneyCents, parseNumberWithin, parsePercent } from '../units'
import { describeProblem } from './describeProblem'
import { problemTexts } from './text/en/problems'

const MM = { system: 'mm' } as const
const INCH = { system: 'inch', fraction: 16 } as const

describe('describeProblem', () => {
  it('says the limit of a length in the units shown', () => {
    const limits = { leastMm: 100, greatestMm: 254 }
    const tooLarge = parseLengthWithin('300', MM, limits)
    if (tooLarge.ok) throw new Error('300 mm passed')
    expect(describeProblem(tooLarge.problem, MM)).toContain('254 mm')
    // By hand: 254 mm are ten inches.
    expect(describeProblem(tooLarge.problem, INCH)).toContain('10″')
  })

  it('repeats what was typed, so that the maker sees which text is meant', () => {
    const wrong = parseLengthWithin('two metres', MM, { leastMm: 0, greatestMm: 1 })
    if (wrong.ok) throw new Error('words passed')
    expect(describeProblem(wrong.problem, MM)).toContain('“two metres”')
  })

  it('has a sentence for every problem that the number parsers give', () => {
    const texts = ['', 'x', '1,234', '-5', '1e9', '99999999999999999999', '1.234']
    const limits = { least: 0, greatest: 10 }
    const problems = texts.flatMap((text) => [
      parseNumberWithin(text, limits),
      parsePercent(text),
      parseMoneyCents(text, { leastCents: 0, greatestCents: 100 }),
      parseLengthWithin(text, MM, { leastMm: 1, greatestMm: 10 }),
    ])
    const codes = new Set(problems.flatMap((result) => (result.ok ? [] : [result.problem.code])))
    expect(codes.size).toBeGreaterThan(12)
    for (const code of codes) expect(Object.keys(problemTexts)).toContain(code)
  })

  it('names the code of a problem that has no sentence', () => {
    expect(describeProblem({ code: 'never-heard-of', values: {} }, MM)).toContain('never-heard-of')
  })
})
