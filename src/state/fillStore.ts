import { createStore } from 'zustand/vanilla'
import type { FillFinding, FillPiece } from '../core/layout'
import type { InputProblem } from '../core/units'

/** What is known of the last search for how offcuts fill the gaps. */
export interface FillEntry {
  /** Stands for what was asked: the option, its wood and gaps, the limits. */
  readonly key: string
  readonly finding: FillFinding | null
  readonly status: 'running' | 'done' | 'cancelled' | 'failed'
  /** 0 to 1. */
  readonly fraction: number
  readonly problem: InputProblem | null
}

interface FillState {
  readonly entry: FillEntry | null
  /** The proposal that is looked at, drawn until it is kept: of which option, and its pieces. */
  readonly shown: { readonly optionId: string; readonly pieces: readonly FillPiece[] } | null
}

/** Nothing of it is saved. The canvas reads it; the search itself comes with the stage that asks. */
export const fillStore = createStore<FillState>(() => ({ entry: null, shown: null }))

export const showProposal = (shown: FillState['shown']): void => fillStore.setState({ shown })

/** What was found has been taken up: it says nothing of the gaps that are left. */
export const forgetFill = (): void => fillStore.setState({ entry: null, shown: null })
