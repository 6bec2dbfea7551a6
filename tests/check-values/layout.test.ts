import { describe, expect, it } from 'vitest'
import { isNear, KNOWN_ANSWERS, knownValue } from '../support/coverKnown'

describe('check values of the searches', () => {
  it.each(KNOWN_ANSWERS.map((row) => [row.id, row] as const))(
    'LAY-14 LAY-17 %s',
    { timeout: 60_000 },
    (_, row) => {
      expect(row.source?.kind).toBe('by-hand')
      expect(row.source?.working ?? '').not.toBe('')
      expect(Math.abs(knownValue(row) - row.expect)).toBeLessThanOrEqual(row.tolerance)
    },
  )

  it('each is told within 1 mm or 0.1 %', () => {
    for (const { tolerance, expect: expected } of KNOWN_ANSWERS)
      expect(tolerance).toBeLessThanOrEqual(Math.max(1, 0.001 * expected))
  })

  it('sabotage: a figure that is off by more than its tolerance is caught', () => {
    const [row] = KNOWN_ANSWERS
    if (row === undefined) throw new Error('no rows')
    const value = knownValue(row)
    expect(isNear(row, value)).toBe(true)
    expect(isNear({ ...row, expect: row.expect + 2.1 * row.tolerance }, value)).toBe(false)
  })
})
