import type { LengthDisplay } from '../units'
import type { Issue } from './issue'
import { issueTexts } from './text/en/issues'
import { valueWords } from './valueWords'

/**
 * The sentence for an issue: what is wrong, where, and what to do, in the maker's units.
 * Rules: PLN-4.
 */
export function describeIssue(issue: Issue, display: LengthDisplay): string {
  return issueTexts[issue.code](valueWords(issue.values, display))
}
