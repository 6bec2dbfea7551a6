import type { Plan } from '../../core/plan'
import type { Command } from '../command'
import { patched } from '../planEdits'

export const renamePlan: Command<{ readonly name: string }> = {
  name: 'renamePlan',
  history: 'step',
  apply: (plan, { name }) => patched(plan, { name }),
}

export const setPlanNote: Command<{ readonly note: string }> = {
  name: 'setPlanNote',
  history: 'step',
  apply: (plan, { note }) => patched(plan, { note }),
}

/** Under its own id, whatever the version was called: it stays the plan that is stored. */
export const goBackTo: Command<{ readonly version: Plan }> = {
  name: 'goBackTo',
  history: 'step',
  apply: (plan, { version }) => patched(plan, { ...version, id: plan.id }),
}
