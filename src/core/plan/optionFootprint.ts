import {
  applyIsometryToRing,
  invertIsometry,
  normaliseOutline,
  ringBounds,
  slabPoint,
  tablePoint,
} from '../geometry'
import { blankRing, finishedRing, type TableOutline } from '../layout'
import { type Issue, issueOf } from './issue'
import { blockedBy, type Found, ready } from './part'
import { keepingIssues } from './keepingIssues'
import type { SlabShapeResult } from './planResult'
import type { FootprintResult } from './tableResult'
import type { Option } from './schema'

export interface FootprintInput {
  readonly optionId: string
  readonly table: Option['table']
  readonly footprint: NonNullable<Option['footprint']>
  readonly shape: SlabShapeResult
}

/** The finished outline and the blank, in the table's frame and on the slab. */
export function optionFootprint({
  optionId,
  table,
  footprint,
  shape,
}: FootprintInput): Found<FootprintResult> {
  const at = ['options', optionId, 'table']
  const outline = usableOutline(table.outline, at)
  if ('code' in outline) return blockedBy([outline])
  const finished = finishedRing(outline)
  const toTable = invertIsometry(footprint.pose)
  const woodInTable = applyIsometryToRing(toTable, shape.outline, tablePoint)
  const blank = blankRing(outline, table.sides, ringBounds(woodInTable))
  const { minX, minY, maxX, maxY } = ringBounds(finished)
  const size = { lengthMm: maxX - minX, widthMm: maxY - minY }
  const larger = size.lengthMm > shape.lengthMm * 1.5 || size.widthMm > shape.widthMm * 2.5
  const issues = larger
    ? [
        issueOf('table-larger-than-slab', 'warning', at, {
          ...size,
          slabLengthMm: shape.lengthMm,
          slabWidthMm: shape.widthMm,
        }),
      ]
    : []
  const finishedOnSlab = applyIsometryToRing(footprint.pose, finished, slabPoint)
  return ready(
    {
      slabId: footprint.slabId,
      finished,
      blank,
      finishedOnSlab,
      blankOnSlab: applyIsometryToRing(footprint.pose, blank, slabPoint),
      finishedLengthMm: size.lengthMm,
      finishedWidthMm: size.widthMm,
    },
    [...issues, ...keepingIssues(optionId, finishedOnSlab, shape.places)],
  )
}

/** The outline itself, or why it cannot be a table. */
function usableOutline(outline: TableOutline, at: readonly string[]): TableOutline | Issue {
  if (outline.kind === 'rounded') {
    const greatestMm = Math.min(outline.lengthMm, outline.widthMm) / 2
    return outline.cornerRadiusMm <= greatestMm
      ? outline
      : issueOf('table-corner-radius', 'blocker', at, { cornerRadiusMm: outline.cornerRadiusMm, greatestMm })
  }
  if (outline.kind !== 'free') return outline
  const normal = normaliseOutline(outline.ring)
  return normal.ok
    ? { kind: 'free', ring: normal.value }
    : issueOf('table-outline-unusable', 'blocker', at, { reason: normal.problem.code })
}
