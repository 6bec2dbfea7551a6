import { createStore } from 'zustand/vanilla'
import type { Plan, TableSideName } from '../core/plan'
import type { InputProblem } from '../core/units'
import { type Preferences, keepPreferences, readPreferences } from './preferences'

export type Stage = 'photo' | 'scale' | 'trace' | 'table' | 'cuts' | 'paper'

export type ToolName = 'select' | 'mark' | 'board' | 'datum' | 'outline' | 'void' | 'footprint' | 'piece'

export type Selection =
  | { readonly kind: 'mark'; readonly slabId: string; readonly markId: string }
  | { readonly kind: 'distance'; readonly slabId: string; readonly distanceId: string }
  | { readonly kind: 'board'; readonly slabId: string; readonly boardId: string }
  | { readonly kind: 'datum'; readonly slabId: string; readonly end: 'from' | 'to' | null }
  | {
      readonly kind: 'trace'
      readonly slabId: string
      readonly traceId: string
      readonly index: number | null
    }
  | { readonly kind: 'footprint'; readonly optionId: string }
  | { readonly kind: 'side'; readonly optionId: string; readonly side: TableSideName }
  | { readonly kind: 'cut'; readonly optionId: string; readonly cutId: string }
  /** `key` as in SlabPiece: a piece needs no name to be selected. */
  | { readonly kind: 'piece'; readonly optionId: string; readonly key: string }
  | { readonly kind: 'placement'; readonly optionId: string; readonly placementId: string }

/** What is neither saved nor undone; the preferences among it are kept by the browser. */
export interface SessionState extends Preferences {
  readonly optionId: string | null
  readonly slabId: string | null
  readonly stage: Stage
  readonly view: 'photo' | 'above'
  readonly tool: ToolName
  readonly selection: Selection | null
  /** The plan as a gesture would leave it; shown instead of the plan while it lasts. */
  readonly draft: Plan | null
  readonly notice: InputProblem | null
}

export const sessionStore = createStore<SessionState>(() => ({
  ...readPreferences(),
  optionId: null,
  slabId: null,
  stage: 'photo',
  view: 'photo',
  tool: 'select',
  selection: null,
  draft: null,
  notice: null,
}))

export const setDraft = (draft: Plan | null): void => sessionStore.setState({ draft })

export const setNotice = (notice: InputProblem | null): void => sessionStore.setState({ notice })

export function setPreferences(changes: Partial<Preferences>): void {
  sessionStore.setState(changes)
  keepPreferences(sessionStore.getState())
}

/** Looks at the first option and slab of a plan that has just been put on the bench. */
export function lookAtPlan(plan: Plan): void {
  const [option] = plan.options
  sessionStore.setState({
    optionId: option?.id ?? null,
    slabId: option?.footprint?.slabId ?? plan.slabs[0]?.id ?? null,
    selection: null,
    draft: null,
    tool: 'select',
  })
}
