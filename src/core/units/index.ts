export type { InputProblem, Result } from './result'
export { ok, problem } from './result'
export { InvariantError, assertNever } from './invariantError'
