import type { Plan } from '../core/plan'
import type { Command } from './command'
import { type HistoryEntry, redone, undone, withStep } from './history'
import { planStore } from './planStore'
import { sessionStore } from './sessionStore'

const endGesture = (): void => {
  if (sessionStore.getState().draft !== null) sessionStore.setState({ draft: null })
}

/** A message speaks of what was done before: it goes with the next step. */
const forgetNotice = (): void => {
  if (sessionStore.getState().notice !== null) sessionStore.setState({ notice: null })
}

/** Carries out a command on the plan: one undo step, or none if nothing changes. A gesture's draft ends with it. */
export function run<Args>(command: Command<Args>, args: Args): void {
  const state = planStore.getState()
  const plan = command.apply(state.plan, args)
  endGesture()
  if (plan === state.plan) return
  forgetNotice()
  const { selection } = sessionStore.getState()
  planStore.setState(
    command.history === 'step' ? withStep(state, plan, command.name, selection) : { plan, future: [] },
  )
}

/** The plan first, then what was in hand at that step: nothing that is gone stays selected. */
export function undo(): void {
  endGesture()
  const state = planStore.getState()
  const step = state.past.at(-1)
  if (step === undefined) return
  planStore.setState(undone(state, sessionStore.getState().selection))
  sessionStore.setState({ selection: step.selection })
}

export function redo(): void {
  endGesture()
  const state = planStore.getState()
  const [step] = state.future
  if (step === undefined) return
  planStore.setState(redone(state, sessionStore.getState().selection))
  sessionStore.setState({ selection: step.selection })
}

/**
 * Carries a late addition to a step into that step: what a worker finds about something that was just set. It makes no
 * step of its own. Plans of the history that hold the same thing get it too, newest first, so that undoing and redoing
 * later steps does not bring back the rough one.
 */
export function amend<Args>(command: Command<Args>, args: Args): void {
  const state = planStore.getState()
  const edit = (plan: Plan): Plan => command.apply(plan, args)
  const plan = edit(state.plan)
  const past = amended(state.past.toReversed(), edit).toReversed()
  const future = amended(state.future, edit)
  const isSame =
    past.every((entry, n) => entry === state.past[n]) && future.every((entry, n) => entry === state.future[n])
  if (plan !== state.plan || !isSame) planStore.setState({ plan, past, future })
}

/** As far as the edit finds something to do; the rest of the list does not hold the thing. */
function amended(entries: readonly HistoryEntry[], edit: (plan: Plan) => Plan): readonly HistoryEntry[] {
  const end = entries.findIndex(({ plan }) => edit(plan) === plan)
  const within = end === -1 ? entries.length : end
  return entries.map((entry, n) => (n < within ? { ...entry, plan: edit(entry.plan) } : entry))
}
