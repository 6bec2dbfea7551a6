/** What a maker typed or opened that we cannot accept: a message key with its values; the catalogue makes the sentence. */
export interface InputProblem {
  readonly code: string
  readonly values: Readonly<Record<string, string | number>>
}

export type Result<T, E = InputProblem> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: E }

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value })

export const problem = (
  code: string,
  values: Readonly<Record<string, string | number>> = {},
): { readonly ok: false; readonly problem: InputProblem } => ({ ok: false, problem: { code, values } })
