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
