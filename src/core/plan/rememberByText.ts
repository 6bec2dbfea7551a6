/**
 * The same function, remembering its last answers by what the input says rather than by which object it is: for inputs
 * that come through a worker's door, where every message is a new object.
 * @param work pure, of plain data
 * @param capacity how many different inputs are kept; the one unused for longest is forgotten first
 */
export function rememberByText<I, R>(work: (input: I) => R, capacity: number): (input: I) => R {
  let recent: readonly { readonly text: string; readonly answer: R }[] = []
  return (input) => {
    const text = JSON.stringify(input)
    const known = recent.find((entry) => entry.text === text)
    const entry = known ?? { text, answer: work(input) }
    recent = [entry, ...recent.filter((other) => other !== entry)].slice(0, capacity)
    return entry.answer
  }
}
