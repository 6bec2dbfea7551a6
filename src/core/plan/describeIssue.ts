import {
  formatAngle,
  formatArea,
  formatLength,
  formatNumber,
  formatPercent,
  type LengthDisplay,
} from '../units'
import type { Issue } from './issue'
import { issueTexts, type ValueWords } from './text/en/issues'

/**
 * The sentence for an issue: what is wrong, where, and what to do, in the maker's units.
 * Rules: PLN-4.
 */
export function describeIssue(issue: Issue, display: LengthDisplay): string {
  return issueTexts[issue.code](valueWords(issue.values, display))
}

/** An issue’s values as words. */
function valueWords(values: Issue['values'], display: LengthDisplay): ValueWords {
  const number = (name: string): number => {
    const value = values[name]
    return typeof value === 'number' ? value : 0
  }
  return {
    length: (name) => formatLength(number(name), display),
    area: (name) => formatArea(number(name), display),
    count: (name) => formatNumber(number(name), { decimals: 0 }),
    angle: (name) => formatAngle(number(name)),
    percent: (name) => formatPercent(number(name)),
    text: (name) => String(values[name] ?? ''),
  }
}
