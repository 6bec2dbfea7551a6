import { describe, expect, it } from 'vitest'
import { type Label, placeLabels } from './labels'

const canvas = { width: 400, height: 300 }
const label = (id: string, x: number, y: number, rank = 1, mustStay = false): Label => ({
  id,
  text: id,
  at: [x, y],
  rank,
  mustStay,
  strong: false,
})
const measure = () => 60

describe('placeLabels', () => {
  it('leaves plates where they are wanted while there is room', () => {
    const placed = placeLabels([label('a', 100, 100), label('b', 200, 100)], 20, measure, canvas)
    expect(placed.map(({ at }) => at)).toEqual([
      [100, 100],
      [200, 100],
    ])
  })

  it('lets the less important one step aside', () => {
    const placed = placeLabels([label('a', 100, 100, 1), label('b', 105, 102, 2)], 20, measure, canvas)
    expect(placed.map(({ id }) => id)).toEqual(['b', 'a'])
    // one plate height and the gap upwards from where it was wanted would still overlap b: 77 against 102 − 23
    expect(placed[1]?.at).toEqual([100, 77])
  })

  it('never lets two plates overlap, however many are wanted at one place', () => {
    const many = Array.from({ length: 30 }, (_, i) => label(`p${i}`, 200, 150))
    const placed = placeLabels(many, 20, measure, canvas)
    expect(placed.length).toBeGreaterThan(3)
    expect(placed.length).toBeLessThan(30)
    placed.forEach((a, i) => {
      for (const b of placed.slice(i + 1)) {
        const apart = Math.abs(a.at[0] - b.at[0]) >= 60 || Math.abs(a.at[1] - b.at[1]) >= 20
        expect(apart, `${a.id} and ${b.id}`).toBe(true)
      }
    })
  })

  it('leaves out what would not be whole, except what must stay', () => {
    expect(placeLabels([label('off', -500, 100)], 20, measure, canvas)).toEqual([])
    expect(placeLabels([label('off', -500, 100, 1, true)], 20, measure, canvas)).toHaveLength(1)
  })
})
