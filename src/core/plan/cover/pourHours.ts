import type { PourResult } from '../pour/answerPour'
import type { SlabRow } from './slabRow'

/** A row with how long its pour takes, once a worker has said so: from the first pour until the cast may be flattened. */
export function withPourHours(row: SlabRow, answer: PourResult | null): SlabRow {
  const heat = answer?.heat
  const [first] = heat?.layers ?? []
  if (first === undefined || heat?.flattenHour === null || heat?.flattenHour === undefined) return row
  return { ...row, pourHours: heat.flattenHour - first.startHour }
}
