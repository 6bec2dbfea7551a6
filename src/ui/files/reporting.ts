import type { InputProblem } from '../../core/units'
import { setNotice } from '../../state/sessionStore'

const isRefusal = (outcome: unknown): outcome is { readonly ok: false; readonly problem: InputProblem } =>
  typeof outcome === 'object' && outcome !== null && 'ok' in outcome && outcome.ok === false

/** Our own errors carry values for developers; the maker needs no more than the first words. */
const REASON_LENGTH = 120

const reasonOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).slice(0, REASON_LENGTH)

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
      values: { reason: reasonOf(error) },
    })
    return null
  }
}
