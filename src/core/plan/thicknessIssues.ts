import { type Issue, issueOf } from './issue'
import type { Option, Slab } from './schema'

/** Wood taken off both faces until they are flat and clean, mm: less than this is cutting it fine (common practice). */
const FLATTENING_ALLOWANCE_MM = 6

/** Whether the slab is thick enough for the table. */
export function thicknessIssues({ id, table }: Option, slab: Slab): readonly Issue[] {
  if (slab.thicknessMm === null) return []
  const leftMm = slab.thicknessMm - table.thicknessMm
  const at = ['options', id, 'table', 'thicknessMm']
  const values = { thicknessMm: table.thicknessMm, slabThicknessMm: slab.thicknessMm, leftMm }
  if (leftMm < 0) return [issueOf('table-thicker-than-slab', 'warning', at, values)]
  return leftMm < FLATTENING_ALLOWANCE_MM ? [issueOf('table-thin-allowance', 'note', at, values)] : []
}
