import type { InputProblem, LengthDisplay } from '../units'
import { problemTexts, unknownProblem } from './text/en/problems'
import { valueWords } from './valueWords'

/**
 * The sentence for what could not be accepted: a typed text, a file, a photo, the browser's storage.
 * A code without a sentence still says that something was not accepted, and which code.
 */
export function describeProblem({ code, values }: InputProblem, display: LengthDisplay): string {
  const sentence = problemTexts[code]
  return sentence === undefined ? unknownProblem(code) : sentence(valueWords(values, display))
}
