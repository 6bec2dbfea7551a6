import { ok, problem, type Result } from '../units'

/** Engines name the place in their own words: "position 12 (line 1 column 13)", "line 1 column 13 of the JSON data". */
function placeOf(error: unknown): string {
  const message = error instanceof Error ? error.message : ''
  const lineAndColumn = /line (\d+) column (\d+)/.exec(message)
  if (lineAndColumn !== null) return `${lineAndColumn[1] ?? ''}:${lineAndColumn[2] ?? ''}`
  return /position (\d+)/.exec(message)?.[1] ?? ''
}

/**
 * The JSON of a plan file's text.
 * @returns plain JSON, unchecked; problem 'plan-broken-json' {at}, a line and column, a position or '' where unknown
 */
export function readPlanText(text: string): Result<unknown> {
  try {
    return ok(JSON.parse(text))
  } catch (error) {
    return problem('plan-broken-json', { at: placeOf(error) })
  }
}
