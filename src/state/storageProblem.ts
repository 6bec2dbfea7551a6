import type { InputProblem } from '../core/units'

/** What a failure of the browser's storage means to the maker. */
export function storageProblem(error: unknown): InputProblem {
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  return name === 'QuotaExceededError'
    ? { code: 'storage-full', values: {} }
    : { code: 'storage-failed', values: { reason: name } }
}
