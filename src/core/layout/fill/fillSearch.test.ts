import { describe, expect, it } from 'vitest'
import { plantedPuzzle, slabFillTask } from '../../../../tests/support/fillCases'
import { pieceTree } from '../../cuts'
import {
  intersectRegions,
  isPointInRegion,
  type Region,
  regionAreaMm2,
  regionsAreaMm2,
  type SlabPoint,
  subtractRegions,
} from '../../geometry'
import type { FillFinding } from './fillProposal'
import { fillSearch } from './fillSearch'
import { fillRoom, type FillTask } from './fillTask'

/** Looks that a search is given here: a second's worth or less. */
const EVALUATIONS = 12_000

function found(task: FillTask, evaluations = EVALUATIONS): FillFinding {
  const search = fillSearch(task)
  if (!search.ok) throw new Error(search.problem.code)
  const { incumbent } = search.value.step(evaluations)
  if (incumbent === null) throw new Error('nothing found')
  return incumbent
}

const SEEDS = [1, 2, 4]

describe('fillSearch', () => {
  it('LAY-22 fills no more than is clear of the joints, and no more than there is', () => {
    for (const seed of SEEDS) {
      const task = slabFillTask(seed)
      const room = fillRoom(task)
      if (!room.ok) throw new Error(room.problem.code)
      const { voidMm2, clearMm2, offcutMm2, reachableMm2 } = room.value
      expect(clearMm2).toBeLessThan(voidMm2)
      expect(reachableMm2).toBe(Math.min(clearMm2, offcutMm2))
      for (const { filledMm2, filledShareOfReachable, pieces } of found(task).proposals) {
        expect(filledMm2).toBeGreaterThan(0.2 * reachableMm2)
        expect(filledShareOfReachable).toBeLessThanOrEqual(1)
        const open = subtractRegions([{ outer: task.blank, holes: [] }], task.wood)
        const inGaps = intersectRegions(
          pieces.map(({ onTable }) => onTable),
          open,
        )
        expect(Math.abs(regionsAreaMm2(inGaps) - filledMm2)).toBeLessThan(pieces.length * 3)
      }
    }
  })

  it('LAY-22 says what is missing when there is nothing to lay, or nothing to fill', () => {
    const task = slabFillTask(1)
    expect(fillSearch({ ...task, offcuts: [] })).toMatchObject({ problem: { code: 'fill-no-offcuts' } })
    const covered = { ...task, wood: [{ outer: task.blank, holes: [] }] }
    expect(fillSearch(covered)).toMatchObject({ problem: { code: 'fill-no-gap' } })
  })

  it('LAY-23 puts a planted shape back, which is nowhere nearer to the wood than the joint', () => {
    const { task, plantedMm2 } = plantedPuzzle(3, 1)
    const [best] = found(task, 8_000).proposals
    if (best === undefined) throw new Error('no proposal')
    expect(best.filledMm2 / plantedMm2).toBeGreaterThan(0.98)
    expect(Math.min(...best.pieces.map(({ leastJointMm }) => leastJointMm))).toBeGreaterThanOrEqual(8)
  })

  it('LAY-24 leaves the very pieces when its cuts are made on the offcuts in order', () => {
    for (const seed of SEEDS) {
      const task = slabFillTask(seed)
      for (const { pieces, leftovers } of found(task).proposals) {
        const cuts = pieces.flatMap(({ cuts: own, anchor }, i) =>
          own.map((cut, j) => ({ ...cut, id: `${i}/${j}`, divides: { kind: 'piece' as const, anchor } })),
        )
        const wood = task.offcuts.map(({ region }) => region)
        const tree = pieceTree(wood, cuts)
        const leaves = tree.leaves.map(({ region }) => region)
        for (const { anchor, onSlab } of pieces) {
          const leaf = leaves.filter((region) => isPointInRegion(anchor, region))
          expect(leaf.map(regionAreaMm2)).toEqual([expect.closeTo(regionAreaMm2(onSlab), 3)])
        }
        expect(tree.cuts.every(({ extentMm }) => extentMm !== null)).toBe(true)
        const laidMm2 = regionsAreaMm2(pieces.map(({ onSlab }) => onSlab))
        const leftMm2 = regionsAreaMm2(leftovers.map(({ region }) => region))
        const kerfMm2 = tree.cuts.reduce((sum, { kerfAreaMm2 }) => sum + kerfAreaMm2, 0)
        // Dust below 1 mm² is not listed as left over.
        expect(Math.abs(laidMm2 + leftMm2 + kerfMm2 - regionsAreaMm2(wood))).toBeLessThan(cuts.length + 1)
      }
    }
  })

  it('LAY-25 finds the same in one step as in many', () => {
    const [once, often] = [fillSearch(slabFillTask(5)), fillSearch(slabFillTask(5))]
    if (!once.ok || !often.ok) throw new Error('no search')
    const whole = once.value.step(4_000)
    let parts = often.value.step(1)
    while (parts.evaluations < whole.evaluations) parts = often.value.step(1)
    expect(parts).toEqual(whole)
    const other = fillSearch({ ...slabFillTask(5), seed: 99 })
    expect(other.ok && other.value.step(4_000).value).not.toBe(whole.value)
  })

  it('LAY-26 keeps to the grain, to the side that is up, and to the least length', () => {
    const task = slabFillTask(2)
    const limits = { ...task.limits, mayTurnOver: false, grainWithinRad: 0.1, leastLengthMm: 200 }
    for (const { pieces } of found({ ...task, limits }).proposals) {
      for (const { pose, onTable } of pieces) {
        const grainRad = pose.angleRad + (task.offcuts[0]?.grainRad ?? 0)
        const offRad = grainRad - Math.PI * Math.round(grainRad / Math.PI)
        expect(Math.abs(offRad)).toBeLessThanOrEqual(0.1 + 1e-9)
        expect(pose.turnedOver).toBe(false)
        expect(extentMm(onTable)).toBeGreaterThan(200 - 1e-6)
      }
    }
  })

  it('LAY-26 offers what needs fewer cuts beside what leaves least resin', () => {
    const { proposals } = found(slabFillTask(4), 30_000)
    const virtues = proposals.flatMap((proposal) => proposal.virtues)
    expect(virtues.toSorted()).toEqual(['fewestCuts', 'leastResin', 'noneTurnedOver'])
    const cutsOf = (virtue: string) =>
      proposals.find((proposal) => proposal.virtues.some((one) => one === virtue))?.cutCount ?? Infinity
    expect(cutsOf('fewestCuts')).toBeLessThanOrEqual(cutsOf('leastResin'))
    for (const { virtues: own, turnedOverCount } of proposals) {
      if (own.includes('noneTurnedOver')) expect(turnedOverCount).toBe(0)
    }
  })
})

/** Greatest distance between two corners. */
function extentMm({ outer }: Region<SlabPoint> | Region): number {
  return Math.max(...outer.flatMap(([x, y]) => outer.map(([p, q]) => Math.hypot(x - p, y - q))))
}
