import { isBuildCode, type IssueCode, isPourCode } from '../../core/plan'
import type { StageName } from './stageNames'

/** Where an issue is put right, by the first word of its code. */
const STAGE_OF_SUBJECT: Readonly<Record<string, StageName>> = {
  slab: 'photo',
  scale: 'scale',
  reference: 'scale',
  board: 'scale',
  marks: 'scale',
  distance: 'scale',
  distances: 'scale',
  tilt: 'scale',
  focal: 'scale',
  outline: 'trace',
  void: 'trace',
  later: 'photo',
  stations: 'trace',
  table: 'table',
  cut: 'cuts',
  cuts: 'cuts',
  piece: 'cuts',
  pieces: 'cuts',
  resin: 'cuts',
  pour: 'pour',
}

/** What of form, wood, weight, work and money is put right beside the prices. */
const PRICE_CODES: ReadonlySet<IssueCode> = new Set([
  'build-step-early',
  'build-slab-unpriced',
  'build-hours-unpriced',
])

/** The stage at which an issue can be put right. */
export function stageOfIssue(code: IssueCode): StageName {
  if (code === 'scale-no-photo') return 'photo'
  if (code === 'slab-clipped') return 'scale'
  if (isPourCode(code)) return 'pour'
  if (isBuildCode(code)) return PRICE_CODES.has(code) ? 'price' : 'form'
  const [subject = ''] = code.split('-')
  return STAGE_OF_SUBJECT[subject] ?? 'scale'
}
