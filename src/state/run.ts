import type { Command } from './command'
import { redone, undone, withStep } from './history'
import { planStore } from './planStore'
import { sessionStore } from './sessionStore'

const endGesture = (): void => {
  if (sessionStore.getState().draft !== null) sessionStore.setState({ draft: null })
}

/** Carries out a command on the plan: one undo step, or none if nothing changes. A gesture's draft ends with it. */
export function run<Args>(command: Command<Args>, args: Args): void {
  const state = planStore.getState()
  const plan = command.apply(state.plan, args)
  endGesture()
  if (plan === state.plan) return
  planStore.setState(command.history === 'step' ? withStep(state, plan, command.name) : { plan, future: [] })
}

export function undo(): void {
  endGesture()
  planStore.setState(undone(planStore.getState()))
}

export function redo(): void {
  endGesture()
  planStore.setState(redone(planStore.getState()))
}
