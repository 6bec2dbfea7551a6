import { InvariantError } from '../units'
import type { Region, TablePoint } from '../geometry'

/** How a base is made of panels. */
export interface BasePanels {
  /** Joints across the form, distances from its start; between them and at the ends no panel is longer than its sheet. */
  readonly jointsMm: readonly number[]
  /** Joints along the form, distances from its far side. */
  readonly lengthwiseMm: readonly number[]
  /** Resin that lies across each of `jointsMm`, mm. */
  readonly wetMm: readonly number[]
}

export interface BaseRequest {
  readonly lengthMm: number
  readonly widthMm: number
  /** Largest sheet in stock, long side first. */
  readonly sheet: readonly [longMm: number, shortMm: number]
  /** How much resin lies across a joint at a distance from the form's start, mm. */
  readonly wetAtMm: (atMm: number) => number
}

const STEP_MM = 10
/** A joint this much further from an even division is as bad as a mm of resin across it. No source. */
const UNEVEN_PER_MM = 0.001

const panelsOf = (sizeMm: number, greatestMm: number): number => Math.ceil(sizeMm / greatestMm - 1e-9)

const evenly = (sizeMm: number, panels: number): readonly number[] =>
  Array.from({ length: panels - 1 }, (_, at) => (sizeMm * (at + 1)) / panels)

/**
 * Where the base of a form is joined, if no sheet is large enough: in as few panels as can be, with the joints where
 * least resin lies over them.
 * @throws InvariantError when a size is not above zero
 * Method: every 10 mm is a place for a joint; the least sum over all choices that leave no panel too long.
 * Rules: FORM-3.
 */
export function baseJoints(request: BaseRequest): BasePanels {
  const { lengthMm, widthMm, sheet } = request
  const [longMm, shortMm] = sheet
  if (!(lengthMm > 0 && widthMm > 0 && shortMm > 0))
    throw new InvariantError('a base has a size', { lengthMm, widthMm, shortMm })
  const ways = [
    { alongMm: longMm, acrossMm: shortMm },
    { alongMm: shortMm, acrossMm: longMm },
  ].map((way) => ({
    ...way,
    panels: [panelsOf(lengthMm, way.alongMm), panelsOf(widthMm, way.acrossMm)] as const,
  }))
  const [first, second] = ways
  if (first === undefined || second === undefined) throw new InvariantError('two ways', {})
  const countOf = ({ panels }: typeof first): number => panels[0] * panels[1]
  const { alongMm, panels } = countOf(second) < countOf(first) ? second : first
  const jointsMm = leastWet(request, panels[0], alongMm)
  return { jointsMm, lengthwiseMm: evenly(widthMm, panels[1]), wetMm: jointsMm.map(request.wetAtMm) }
}

interface Chain {
  readonly cost: number
  readonly atMm: number
  readonly before: Chain | null
}

function leastWet({ lengthMm, wetAtMm }: BaseRequest, panels: number, greatestMm: number): readonly number[] {
  const even = evenly(lengthMm, panels)
  let chains: readonly Chain[] = [{ cost: 0, atMm: 0, before: null }]
  for (const [joint, evenMm] of even.entries()) {
    const places: number[] = []
    const leftPanels = panels - 1 - joint
    for (let atMm = STEP_MM; atMm < lengthMm; atMm += STEP_MM)
      if (lengthMm - atMm <= leftPanels * greatestMm && atMm <= (joint + 1) * greatestMm) places.push(atMm)
    chains = [...places, evenMm].flatMap((atMm) => {
      const cost = wetAtMm(atMm) + UNEVEN_PER_MM * Math.abs(atMm - evenMm)
      const before = chains
        .filter((chain) => atMm > chain.atMm && atMm - chain.atMm <= greatestMm + 1e-9)
        .reduce<Chain | null>((best, chain) => (best === null || chain.cost < best.cost ? chain : best), null)
      return before === null ? [] : [{ cost: before.cost + cost, atMm, before }]
    })
  }
  const last = chains
    .filter(({ atMm }) => lengthMm - atMm <= greatestMm + 1e-9)
    .reduce<Chain | null>((best, chain) => (best === null || chain.cost < best.cost ? chain : best), null)
  const joints: number[] = []
  for (let chain = last; chain !== null && chain.before !== null; chain = chain.before)
    joints.push(chain.atMm)
  return joints.toReversed()
}

/**
 * Resin across a line square to the table's length.
 * @param regions what is filled with resin, in the table frame
 * @returns mm of the line at `xMm` that lie in a region
 * Method: crossings of the line with every ring, in pairs.
 * Rules: FORM-3.
 */
export function wetAcrossMm(regions: readonly Region<TablePoint>[], xMm: number): number {
  return regions.reduce((sum, { outer, holes }) => {
    const crossings = [outer, ...holes].flatMap((ring) =>
      ring.flatMap((from, at) => {
        const to = ring[(at + 1) % ring.length] ?? from
        if (from[0] > xMm === to[0] > xMm) return []
        return [from[1] + ((xMm - from[0]) / (to[0] - from[0])) * (to[1] - from[1])]
      }),
    )
    const sorted = crossings.toSorted((a, b) => a - b)
    return sum + sorted.reduce((wet, y, at) => (at % 2 === 1 ? wet + y - (sorted[at - 1] ?? y) : wet), 0)
  }, 0)
}
