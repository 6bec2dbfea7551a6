import type { InputProblem } from '../../core/units'
import { setNotice } from '../../state/sessionStore'

const isRefusal = (outcome: unknown): outcome is { readonly ok: false; readonly problem: InputProblem } =>
  typeof outcome === 'object' && outcome !== null && 'ok' in outcome && outcome.ok === false

/**
 * Does something with files or storage, and tells the maker when it was refused or failed.
 * @returns what the work gave, or null when it failed
 */
export async function reporting<T>(work: () => Promise<T>): Promise<T | null> {
  try {
    const outcome = await work()
    if (isRefusal(outcome)) setNotice(outcome.problem)
    return outcome
  } catch (error) {
    setNotice({
      code: 'work-failed',
      values: { reason: error instanceof Error ? error.message : String(error) },
    })
    return null
  }
}
