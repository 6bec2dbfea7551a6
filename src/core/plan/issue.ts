import { BUILD_CODES, type BuildCode } from './build/buildCodes'
import type { ScaleProblemCode } from '../photo'
import { RESIN_NOTICE_CODES, type ResinNoticeCode } from '../resin'

/** Where in the plan an issue sits, e.g. ['slabs', 's1', 'tapedDistances', 'd4']: names and ids, never indices. */
export type PlanPath = readonly string[]

/**
 * Something in a legal plan that cannot be done or is unwise. Data only: describeIssue makes the sentence.
 * `id` is stable for the same cause (code and path), so that the screen can keep its place.
 */
export interface Issue {
  readonly id: string
  readonly code: IssueCode
  readonly severity: 'blocker' | 'warning' | 'note'
  readonly at: PlanPath
  readonly values: Readonly<Record<string, string | number>>
}

/** Every code has a sentence in text/en.ts and a test. Values are named beside it, with their units. */
export const ISSUE_CODES = [
  // scale: those of core/photo keep their own names (ScaleProblemCode)
  'scale-no-photo', // {}
  'scale-datum-missing', // {}
  'scale-datum-unusable', // {reason}: a problem code of core/photo
  'scale-unsure', // {plusMinusMm, lengthMm, markNames}: how sure the least sure length is; marks left as clicked
  'scale-board-unchecked', // {}: the size hangs on a board alone
  'later-photo-few-marks', // {photoName, marks, needed}: marks of the first photo that are set on a later one
  'later-photo-no-scale', // {photoName}: its marks fit no view of the slab
  'later-photo-off', // {photoName, offMm}: how far its marks are from where the first photo has them
  // slab
  'slab-thickness-missing', // {}: the resin and the notes on thickness wait for it
  'slab-not-dry', // {share, limitFraction}: too wet to be sealed in resin
  // outline
  'outline-missing', // {}
  'outline-too-few-points', // {points}
  'outline-crosses-itself', // {edgeA, edgeB, traceName}
  'outline-no-area', // {traceName}
  'outline-beyond-horizon', // {}: part of the outline lies where the slab's plane ends in the picture
  'outline-cut-away', // {cutBackMm}: nothing is left of the slab
  'outline-cut-apart', // {cutBackMm, leftAreaMm2}: only the largest part is kept
  'void-too-few-points', // {traceName}
  'void-crosses-itself', // {traceName, edgeA, edgeB}
  'void-no-area', // {traceName}
  'void-outside-slab', // {traceName}
  'void-deeper-than-slab', // {traceName, depthMm, thicknessMm}
  'stations-too-few', // {stations}
  'stations-out-of-order', // {alongMm}
  'stations-edges-crossed', // {alongMm}
  // table
  'table-not-laid', // {}
  'table-on-missing-slab', // {}
  'table-larger-than-slab', // {lengthMm, widthMm, slabLengthMm, slabWidthMm}
  'table-on-defect', // {traceName, areaMm2}
  'table-beside-figure', // {traceName, outsideFraction}
  'table-thicker-than-slab', // {thicknessMm, slabThicknessMm}
  'table-thin-allowance', // {thicknessMm, slabThicknessMm, leftMm}
  'table-outline-unusable', // {reason}: a problem code of core/geometry
  'table-oversize-not-covered', // {areaMm2}
  'table-corner-radius', // {cornerRadiusMm, greatestMm}
  // cuts and pieces
  'cut-misses-piece', // {cutName, pieceName}
  'cut-kerf-takes-all', // {cutName, pieceName, kerfMm}
  'cuts-cross', // {cutName, otherName}: the later one stops at the earlier one's kerf
  'cut-piece-unknown', // {cutName}
  'piece-anchor-lost', // {pieceName}
  'piece-anchor-shared', // {pieceName, otherName}
  'piece-outside-table', // {pieceName}
  'pieces-overlap', // {pieceName, otherName, areaMm2}
  // resin
  'resin-cast-thicker-than-slab', // {castThicknessMm, slabThicknessMm}
  'resin-cast-below-finished', // {castThicknessMm, thicknessMm}
  // pour: the notices of core/resin keep their own names (ResinNoticeCode)
  'pour-nothing-to-fill', // {}
] as const

export type IssueCode = (typeof ISSUE_CODES)[number] | ScaleProblemCode | ResinNoticeCode | BuildCode

const POUR_CODES: ReadonlySet<string> = new Set<IssueCode>([...RESIN_NOTICE_CODES, 'pour-nothing-to-fill'])

const BUILD_CODE_SET: ReadonlySet<string> = new Set<IssueCode>(BUILD_CODES)

/** Whether an issue speaks of wood, form, weight, work or price. */
export const isBuildCode = (code: IssueCode): boolean => BUILD_CODE_SET.has(code)

/** Whether an issue speaks of the pour. */
export const isPourCode = (code: IssueCode): boolean => POUR_CODES.has(code)

/** The only maker of issues: the id follows from the code and the place. */
export function issueOf(
  code: IssueCode,
  severity: Issue['severity'],
  at: PlanPath,
  values: Issue['values'] = {},
): Issue {
  return { id: [code, ...at].join('/'), code, severity, at, values }
}
