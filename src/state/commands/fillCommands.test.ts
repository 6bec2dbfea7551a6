import { describe, expect, it } from 'vitest'
import { frozenPlan } from '../../../tests/support/frozenPlan'
import { slabPoint } from '../../core/geometry'
import { InvariantError } from '../../core/units'
import { idsForPieces, keepFill } from './fillCommands'

const PLAN = frozenPlan()
const region = { outer: [], holes: [] }
const cut = {
  line: { from: slabPoint(0, 0), to: slabPoint(100, 0) },
  kerfMm: 3,
  wasteSide: 'left',
} as const
const PIECES = [
  {
    offcutKey: 'one',
    anchor: slabPoint(10, 10),
    pose: { xMm: 1, yMm: 2, angleRad: 0, turnedOver: false },
    cuts: [cut, cut],
    onSlab: region,
    onTable: region,
    areaMm2: 1,
    leastJointMm: 8,
  },
]
const ARGS = { optionId: 'o1', slabId: 's1', pieces: PIECES, ids: ['n1', 'n2', 'n3', 'n4'] }

describe('keepFill', () => {
  it('adds names, cuts and placements in one step, the same each time', () => {
    const [before] = PLAN.options
    const after = keepFill.apply(PLAN, ARGS)
    const option = after.options.find(({ id }) => id === 'o1')
    expect(idsForPieces(PIECES)).toBe(4)
    expect(option?.pieces).toHaveLength((before?.pieces.length ?? 0) + 1)
    expect(option?.cuts.slice(-2)).toMatchObject([
      { kind: 'line', from: [0, 0], to: [100, 0] },
      { kind: 'line', from: [0, 0], to: [100, 0] },
    ])
    expect(option?.placements.at(-1)).toMatchObject({ pieceId: 'n1', pose: PIECES[0]?.pose })
    expect(keepFill.apply(PLAN, ARGS)).toEqual(after)
  })

  it('throws for too few ids and for a slab that is not there', () => {
    expect(() => keepFill.apply(PLAN, { ...ARGS, ids: ['n1'] })).toThrow(InvariantError)
    expect(() => keepFill.apply(PLAN, { ...ARGS, slabId: 'nobody' })).toThrow(InvariantError)
  })
})
