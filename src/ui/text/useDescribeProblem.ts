import { describeProblem } from '../../core/plan'
import type { InputProblem } from '../../core/units'
import { useDisplay } from './useDisplay'

/** Makes the sentence for an input problem, in the units shown. */
export function useDescribeProblem(): (problem: InputProblem) => string {
  const display = useDisplay()
  return (problem) => describeProblem(problem, display)
}
