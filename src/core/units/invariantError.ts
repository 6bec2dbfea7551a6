/** Our own bug: a precondition that callers must keep was broken. Never shown as the maker's fault. */
export class InvariantError extends Error {
  override readonly name = 'InvariantError'
  constructor(
    what: string,
    readonly values: Readonly<Record<string, unknown>> = {},
  ) {
    super(`${what} ${JSON.stringify(values)}`)
  }
}

/** Ends a switch over a tagged union: the compiler refuses a forgotten case. */
export function assertNever(value: never): never {
  throw new InvariantError('unexpected case', { value })
}
