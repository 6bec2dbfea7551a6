import { InvariantError } from '../../core/units'
import type { Action } from './action'
import { ACTIONS, type ActionId } from './registry'

export function actionById(id: ActionId): Action {
  const action = ACTIONS.find((other) => other.id === id)
  if (action === undefined) throw new InvariantError('no such action', { id })
  return action
}

/** Does what the action says, if it can be done now. */
export function performAction(id: ActionId): void {
  const action = actionById(id)
  if (action.isEnabled()) action.perform()
}
