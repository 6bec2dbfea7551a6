import { describe, expect, it } from 'vitest'
import { rememberByText } from './rememberByText'

describe('rememberByText', () => {
  it('PLN-2 works once for inputs that say the same, whichever objects they are', () => {
    let worked = 0
    const area = rememberByText(({ sides }: { readonly sides: readonly [number, number] }) => {
      worked += 1
      return { mm2: sides[0] * sides[1] }
    }, 2)
    const first = area({ sides: [3, 4] })
    expect(area({ sides: [3, 4] })).toBe(first)
    expect(worked).toBe(1)
    expect(area({ sides: [5, 4] })).toEqual({ mm2: 20 })
    expect(area({ sides: [3, 4] })).toBe(first)
    expect(area({ sides: [6, 4] })).toEqual({ mm2: 24 })
    // The one unused for longest is forgotten.
    area({ sides: [5, 4] })
    expect(worked).toBe(4)
  })
})
