import { describe, expect, it } from 'vitest'
import { pointToSegmentDistanceMm, type Point, type Ring } from '../../geometry'
import { sheetProblems, type Segment } from '../../drawing'
import { computePlan } from '../computePlan'
import { sheetText } from '../text/en/sheet'
import { INCH, MM, sheetPlan } from '../../../../tests/support/sheetPlan'
import { gatherTakeAway, type TakeAwayInput } from '../takeAway/planDrawing'
import { TEMPLATE_OVERLAP_MM, templateSheets, type TemplateSheet } from './templateSheets'

const job = sheetPlan()

function inputOf(display: TakeAwayInput['display']): TakeAwayInput {
  const result = computePlan(job.plan)
  const input = gatherTakeAway({ ...job, result, display, dateText: '14 March 2026', text: sheetText })
  if (input === null) throw new Error('the plan is not worked out')
  return input
}

/** Everything a tile shows, back in the frame of the wood: as if the sheets were taped together. */
function backOnWood({ sheet, tile, window }: TemplateSheet): readonly Segment[] {
  const back = ([x, y]: Point): Point => [x - window.xMm + tile.leftMm, y - window.yMm + tile.topMm]
  return sheet.items.flatMap((item) =>
    item.kind === 'segments' && item.stroke.widthMm === 0.5
      ? item.segments.map(([a, b]): Segment => [back(a), back(b)])
      : [],
  )
}

/** Places along a ring, every 2 mm. */
const placesAlong = (ring: Ring): readonly Point[] =>
  ring.flatMap((from, k) => {
    const to = ring[(k + 1) % ring.length] ?? from
    const steps = Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / 2)
    return Array.from({ length: steps }, (_, n): Point => [
      from[0] + ((to[0] - from[0]) * n) / steps,
      from[1] + ((to[1] - from[1]) * n) / steps,
    ])
  })

const isShown = (place: Point, segments: readonly Segment[]): boolean =>
  segments.some(([a, b]) => pointToSegmentDistanceMm(place, a, b) < 0.01)

describe('templateSheets', () => {
  const input = inputOf(MM)

  it.each(['a4', 'letter', 'a3'] as const)(
    'SHT-14 put back together cover the outline without a gap, %s',
    (paper) => {
      const tiles = templateSheets(input, { frame: 'slab', stretchMm: null, paper })
      const segments = tiles.flatMap(backOnWood)
      const missing = placesAlong(input.shape.outline).filter((place) => !isShown(place, segments))
      expect(missing).toEqual([])
      // A set that has lost a page is found out.
      const lost = tiles.slice(1).flatMap(backOnWood)
      expect(placesAlong(input.shape.outline).some((place) => !isShown(place, lost))).toBe(true)
    },
  )

  it('SHT-14 neighbours overlap, and every sheet has its square', () => {
    const tiles = templateSheets(input, { frame: 'table', stretchMm: null, paper: 'a4' })
    const [first] = tiles
    const next = tiles.find(({ tile }) => tile.column === 1 && tile.row === 0)
    const step = (next?.tile.leftMm ?? 0) - (first?.tile.leftMm ?? 0)
    expect((first?.window.widthMm ?? 0) - step).toBeCloseTo(TEMPLATE_OVERLAP_MM, 9)
    for (const { sheet } of tiles) {
      const squares = sheet.items.filter(
        (item) =>
          item.kind === 'polygon' &&
          item.rings[0]?.[1]?.[0] !== undefined &&
          Math.abs(item.rings[0][1][0] - (item.rings[0][0]?.[0] ?? 0) - 50) < 1e-9,
      )
      expect(squares).toHaveLength(1)
    }
  })

  it('SHT-14 shows a stretch alone', () => {
    const whole = templateSheets(input, { frame: 'slab', stretchMm: null, paper: 'a4' })
    const waist = templateSheets(input, { frame: 'slab', stretchMm: [1000, 1400], paper: 'a4' })
    expect(waist.length).toBeLessThan(whole.length / 2)
    const segments = waist.flatMap(backOnWood)
    const inside = placesAlong(input.shape.outline).filter(([x]) => x > 1000 && x < 1400)
    expect(inside.filter((place) => !isShown(place, segments))).toEqual([])
    expect(templateSheets(input, { frame: 'slab', stretchMm: [5000, 6000], paper: 'a4' })).toEqual([])
  })

  it.each(['a4', 'letter', 'a3', 'tabloid'] as const)(
    'SHT-8 SHT-14 has nothing clipped or overlapping on %s',
    (paper) => {
      for (const display of [MM, INCH]) {
        const tiles = templateSheets(inputOf(display), { frame: 'table', stretchMm: null, paper })
        expect(tiles.length).toBeGreaterThan(1)
        expect(tiles.flatMap(({ sheet }) => sheetProblems(sheet))).toEqual([])
      }
    },
  )
})
