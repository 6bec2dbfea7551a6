import type { ResinNotice } from '../../resin'
import { type Issue, issueOf } from '../issue'

/** Values that tell two notices of one code apart. */
const WHERE = ['layer', 'gapName', 'pieceName', 'packName', 'figure', 'entryName', 'firstName', 'secondName']

/**
 * Notices of a pour as issues of its option. What keeps a figure from being given blocks only that figure; the same
 * notice of the same place is said once.
 * Rules: POUR-7.
 */
export function pourIssues(optionId: string, notices: readonly ResinNotice[]): readonly Issue[] {
  const issues = notices.map(({ code, severity, values }) => {
    const where = WHERE.flatMap((name) => (values[name] === undefined ? [] : [String(values[name])]))
    return issueOf(code, severity, ['options', optionId, 'pour', ...where], values)
  })
  return [...new Map(issues.map((issue) => [issue.id, issue])).values()]
}
