import type { InputProblem } from '../core/units'
import { setNotice } from '../state/sessionStore'
import { createStore } from 'zustand/vanilla'

export type DialogName = 'help' | 'jobs' | 'versions'

/** A choice that the program must ask for, with what each answer does. */
export interface Question {
  /** Why it is asked. */
  readonly problem: InputProblem
  readonly yes: string
  readonly no: string
  readonly onYes: () => void
  /** Further answers. */
  readonly more?: readonly { readonly label: string; readonly onChoose: () => void }[]
}

interface UiState {
  /** False until the last job, or the demo, lies on the bench. */
  readonly isReady: boolean
  readonly dialog: DialogName | null
  readonly question: Question | null
}

/** What lies over the workbench: nothing else in the program needs to know. */
export const uiStore = createStore<UiState>(() => ({ isReady: false, dialog: null, question: null }))

export const setReady = (): void => uiStore.setState({ isReady: true })

/** A message would lie half behind the dialog, and it speaks of something else. */
export function showDialog(dialog: DialogName | null): void {
  if (dialog !== null) setNotice(null)
  uiStore.setState({ dialog })
}

export const ask = (question: Question | null): void => uiStore.setState({ question })
