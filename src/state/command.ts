import type { Plan } from '../core/plan'

/**
 * The only way in which a plan changes. Pure: a plan and what the maker asked for go in, a new plan comes out.
 * A command that changes nothing returns the very plan it was given. An id that the plan does not hold is our own
 * bug and throws InvariantError.
 */
export interface Command<Args> {
  /** Also the label of the undo step: the catalogue holds `command-<name>`. */
  readonly name: string
  readonly history: 'step' | 'none'
  readonly apply: (plan: Plan, args: Args) => Plan
}
