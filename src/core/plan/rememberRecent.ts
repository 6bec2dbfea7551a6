/**
 * The same function, remembering its last answers: a part of the result is worked out anew only when its own slice of
 * the plan changes. Inputs are compared field by field: slices by identity (plans are never changed in place),
 * primitives by value.
 * @param capacity how many different inputs are kept; the one unused for longest is forgotten first
 */
export function rememberRecent<I extends object, R>(
  work: (input: I) => R,
  capacity: number,
): (input: I) => R {
  let recent: readonly { readonly input: I; readonly answer: R }[] = []
  return (input) => {
    const known = recent.find((entry) => hasSameFields(entry.input, input))
    const entry = known ?? { input, answer: work(input) }
    if (recent[0] !== entry) recent = [entry, ...recent.filter((other) => other !== entry)].slice(0, capacity)
    return entry.answer
  }
}

function hasSameFields<I extends object>(a: I, b: I): boolean {
  const keys = Object.keys(a) as (keyof I)[]
  return keys.length === Object.keys(b).length && keys.every((key) => Object.is(a[key], b[key]))
}
