import type { ResinNotice } from '../../resin'
import { type Issue, issueOf } from '../issue'

/** Values that tell two notices of one code and one layer apart. */
const WHERE = ['gapName', 'pieceName', 'packName', 'figure', 'entryName', 'firstName', 'secondName']

/**
 * Notices of a pour as issues of its option. What keeps a figure from being given blocks only that figure; the same
 * notice of the same place is said once.
 * Rules: POUR-7.
 */
export function pourIssues(optionId: string, notices: readonly ResinNotice[]): readonly Issue[] {
  const issues = notices.map(({ code, severity, values }) => {
    const { layer } = values
    const at = ['options', optionId, 'pour', ...(layer === undefined ? [] : [String(layer)])]
    const issue = issueOf(code, severity, at, values)
    const where = WHERE.flatMap((name) => (values[name] === undefined ? [] : [String(values[name])]))
    return where.length === 0 ? issue : { ...issue, id: [issue.id, ...where].join('/') }
  })
  return [...new Map(issues.map((issue) => [issue.id, issue])).values()]
}
