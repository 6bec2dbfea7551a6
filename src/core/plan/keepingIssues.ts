import { intersectRegions, regionsAreaMm2, type Ring, type SlabPoint } from '../geometry'
import { type Issue, issueOf } from './issue'
import type { SlabPlace } from './planResult'

/** Less of a defect in the table than this is the line's own uncertainty, mm². Common practice, no source. */
const LEAST_DEFECT_MM2 = 25
/** Of a figure, so much may lie outside: a line round a figure is drawn with room to spare. Common practice, no source. */
const OUTSIDE_FRACTION = 0.1

/** Defects that lie in the finished table, and figures that lie outside it. Rules: PLN-13. */
export function keepingIssues(
  optionId: string,
  finishedOnSlab: Ring<SlabPoint>,
  places: readonly SlabPlace[],
): readonly Issue[] {
  const table = [{ outer: finishedOnSlab, holes: [] }]
  return places.flatMap(({ traceId, kind, name, ring, areaMm2 }) => {
    const at = ['options', optionId, 'places', traceId]
    const insideMm2 = regionsAreaMm2(intersectRegions([{ outer: ring, holes: [] }], table))
    const values = { traceName: name, areaMm2: insideMm2 }
    if (kind === 'defect') {
      return insideMm2 > LEAST_DEFECT_MM2 ? [issueOf('table-on-defect', 'warning', at, values)] : []
    }
    const outsideFraction = 1 - insideMm2 / areaMm2
    return outsideFraction > OUTSIDE_FRACTION
      ? [issueOf('table-beside-figure', 'note', at, { traceName: name, outsideFraction })]
      : []
  })
}
