import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { randomSlab } from '../../../tests/support/randomSlab'
import { regionsAreaMm2, type SlabPoint, slabPoint } from '../geometry'
import { makeCut } from './makeCut'
import { type NamedCut, pieceTree } from './pieceTree'

const board = {
  outer: [slabPoint(0, 0), slabPoint(2000, 0), slabPoint(2000, 800), slabPoint(0, 800)],
  holes: [],
}

const cutAt = (id: string, y: number, more: Partial<NamedCut> = {}): NamedCut => ({
  id,
  line: { from: slabPoint(0, y), to: slabPoint(2000, y) },
  kerfMm: 3,
  wasteSide: 'left',
  divides: { kind: 'in-hand' },
  ...more,
})

describe('makeCut', () => {
  it('CUT-4 takes the kerf from the waste side and leaves the kept edge on the line', () => {
    const { kept, waste, kerfAreaMm2 } = makeCut(board, cutAt('c', 100))
    expect(regionsAreaMm2(kept)).toBe(2000 * 700)
    expect(regionsAreaMm2(waste)).toBe(2000 * 97)
    expect(kerfAreaMm2).toBe(2000 * 3)
    expect(kept.flatMap(({ outer }) => outer).some(([, y]) => y === 100)).toBe(true)
  })

  it('CUT-3 turns a strip narrower than the kerf to dust', () => {
    const { waste, kerfAreaMm2 } = makeCut(board, cutAt('c', 2))
    expect(waste).toEqual([])
    expect(kerfAreaMm2).toBe(2000 * 2)
  })
})

describe('pieceTree', () => {
  it('CUT-3 divides what is in hand and leaves what has fallen off alone', () => {
    const tree = pieceTree([board], [cutAt('far', 100), cutAt('start', 0, CROSSCUT)])
    expect(tree.leaves.map(({ inHand }) => inHand)).toEqual([true, false, false])
    expect(regionsAreaMm2(tree.leaves.filter(({ inHand }) => inHand).map(({ region }) => region))).toBe(
      1700 * 700,
    )
  })

  it('CUT-3 a cut of a named piece leaves both its children as pieces', () => {
    const tree = pieceTree([board], [cutAt('far', 100), cutAt('again', 50, NAMED)])
    expect(tree.leaves).toHaveLength(3)
    expect(tree.cuts.map(({ extentMm }) => extentMm)).toEqual([
      [0, 2000],
      [0, 2000],
    ])
  })

  it('CUT-5 a cut that touches no wood divides nothing', () => {
    const tree = pieceTree([board], [cutAt('miss', -10)])
    expect(tree.leaves).toEqual([{ region: board, inHand: true, cutId: null }])
    expect(tree.cuts).toEqual([{ cutId: 'miss', extentMm: null, kerfAreaMm2: 0, takesAll: false }])
  })

  it('CUT-3 pieces and kerf are the slab for random slabs and cuts', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.array(
          fc.record({
            x: fc.double({ min: -1000, max: 1000, noNaN: true }),
            y: fc.double({ min: -400, max: 400, noNaN: true }),
            angle: fc.double({ min: -3.1, max: 3.1, noNaN: true }),
            kerfMm: fc.double({ min: 0, max: 8, noNaN: true }),
          }),
          { minLength: 1, maxLength: 6 },
        ),
        (seed, cuts) => {
          const { outer, holes } = randomSlab(seed)
          const wood = [{ outer, holes }]
          const tree = pieceTree(wood, cuts.map(randomCut))
          const pieces = regionsAreaMm2(tree.leaves.map(({ region }) => region))
          const kerf = tree.cuts.reduce((sum, cut) => sum + cut.kerfAreaMm2, 0)
          expect(Math.abs(pieces + kerf - regionsAreaMm2(wood))).toBeLessThan(1)
        },
      ),
      { seed: 20_262, numRuns: 150 },
    )
  })
})

const CROSSCUT: Partial<NamedCut> = {
  line: { from: slabPoint(300, 800), to: slabPoint(300, 0) as SlabPoint },
}

const NAMED: Partial<NamedCut> = { divides: { kind: 'piece', anchor: slabPoint(1000, 20) } }

function randomCut(
  { x, y, angle, kerfMm }: { x: number; y: number; angle: number; kerfMm: number },
  index: number,
): NamedCut {
  return {
    id: `c${index}`,
    line: { from: slabPoint(x, y), to: slabPoint(x + Math.cos(angle) * 100, y + Math.sin(angle) * 100) },
    kerfMm,
    wasteSide: index % 2 === 0 ? 'left' : 'right',
    divides: { kind: 'in-hand' },
  }
}
