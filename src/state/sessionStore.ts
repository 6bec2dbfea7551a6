import { createStore } from 'zustand/vanilla'
import type { LostPart, Plan } from '../core/plan'
import type { InputProblem } from '../core/units'
import {
  type BoardSize,
  type Preferences,
  type RuleSize,
  keepPreferences,
  readPreferences,
} from './preferences'

export type Stage =
  'slabs' | 'photo' | 'scale' | 'trace' | 'table' | 'cuts' | 'pour' | 'form' | 'price' | 'paper'

/** The photo as taken, the slab straight from above, or the table with its pieces in place. */
export type ViewName = 'photo' | 'above' | 'table'

export type ToolName =
  | 'select'
  | 'mark'
  | 'board'
  | 'rule'
  | 'line'
  | 'datum'
  | 'wood'
  | 'notWood'
  | 'outline'
  | 'void'
  | 'proposals'
  | 'push'
  | 'smooth'
  | 'straighten'
  | 'redraw'
  | 'footprint'
  | 'piece'

/** What is selected, of the slab and the option that are looked at. */
export type Selection =
  | { readonly kind: 'mark'; readonly markId: string }
  | { readonly kind: 'board'; readonly boardId: string }
  | { readonly kind: 'rule'; readonly ruleId: string }
  /** A straight line, or a point of it by its place. */
  | { readonly kind: 'line'; readonly lineId: string; readonly point: number | null }
  | { readonly kind: 'distance'; readonly distanceId: string }
  /** A point of the trace by its place in the ring, or the whole of it. */
  | { readonly kind: 'trace'; readonly traceId: string; readonly point: number | null }
  | { readonly kind: 'datum'; readonly end: 'from' | 'to' | null }
  | { readonly kind: 'footprint' }
  | { readonly kind: 'cut'; readonly cutId: string }
  /** `key` as in SlabPiece: a piece needs no name to be selected. */
  | { readonly kind: 'piece'; readonly key: string }
  | { readonly kind: 'placement'; readonly placementId: string }

/** What has been said so far of the next board: nothing is taken for granted. */
export type TypedBoard = { readonly [K in keyof BoardSize]: BoardSize[K] | null }

const NO_BOARD: TypedBoard = { lengthMm: null, widthMm: null, thicknessMm: null }

/** The same of the next rule. */
export type TypedRule = { readonly [K in keyof RuleSize]: RuleSize[K] | null }

const NO_RULE: TypedRule = { lengthMm: null, thicknessMm: null }

/** What is neither saved nor undone; the preferences among it are kept by the browser. */
export interface SessionState extends Preferences {
  readonly optionId: string | null
  readonly slabId: string | null
  /** Which photo of the slab is looked at; null, or a photo of another slab: its first. */
  readonly photoId: string | null
  readonly stage: Stage
  readonly view: ViewName
  readonly tool: ToolName
  readonly selection: Selection | null
  /** What the next board that is laid on the slab measures. */
  readonly boardSize: TypedBoard
  /** How long the next rule or batten is that is laid on the slab. */
  readonly ruleSize: TypedRule
  /** The map of where the photo is weak lies over the slab. */
  readonly showsWeak: boolean
  /** Lines that are drawn cling to the edge between their points; otherwise they go straight. */
  readonly followsEdge: boolean
  /** Radius of the round tool that pushes edges, CSS px: what it reaches in the slab hangs on the zoom. */
  readonly pushRadiusPx: number
  /** The plan as a gesture would leave it; shown instead of the plan while it lasts. */
  readonly draft: Plan | null
  readonly notice: InputProblem | null
  /** What could not be kept of the plan on the bench; emptied once the maker has read it. */
  readonly lost: readonly LostPart[]
}

export const sessionStore = createStore<SessionState>(() => ({
  ...readPreferences(),
  optionId: null,
  slabId: null,
  photoId: null,
  stage: 'photo',
  view: 'photo',
  tool: 'select',
  selection: null,
  boardSize: NO_BOARD,
  ruleSize: NO_RULE,
  showsWeak: false,
  followsEdge: false,
  pushRadiusPx: 30,
  draft: null,
  notice: null,
  lost: [],
}))

export const setDraft = (draft: Plan | null): void => sessionStore.setState({ draft })

export const setSelection = (selection: Selection | null): void => sessionStore.setState({ selection })

export const setTool = (tool: ToolName): void => sessionStore.setState({ tool })

export const setView = (view: ViewName): void => sessionStore.setState({ view })

/** Turns to another photo of the slab; what was selected may not show there. */
export const setPhotoId = (photoId: string): void =>
  sessionStore.setState({ photoId, view: 'photo', selection: null })

export const setNotice = (notice: InputProblem | null): void => sessionStore.setState({ notice })

export const forgetLost = (): void => sessionStore.setState({ lost: [] })

export function setPreferences(changes: Partial<Preferences>): void {
  sessionStore.setState(changes)
  keepPreferences(sessionStore.getState())
}

/** The size of the next board, once all three of its lengths are said. */
export function wholeBoard({ lengthMm, widthMm, thicknessMm }: TypedBoard): BoardSize | null {
  return lengthMm === null || widthMm === null || thicknessMm === null
    ? null
    : { lengthMm, widthMm, thicknessMm }
}

/** The size of the next rule, once both its lengths are said. */
export const wholeRule = ({ lengthMm, thicknessMm }: TypedRule): RuleSize | null =>
  lengthMm === null || thicknessMm === null ? null : { lengthMm, thicknessMm }

/** Looks at the first option and slab of a plan that has just been put on the bench. */
export function lookAtPlan(plan: Plan): void {
  const [option] = plan.options
  sessionStore.setState({
    optionId: option?.id ?? null,
    slabId: option?.footprint?.slabId ?? plan.slabs[0]?.id ?? null,
    photoId: null,
    selection: null,
    draft: null,
    tool: 'select',
    boardSize: NO_BOARD,
    ruleSize: NO_RULE,
  })
}
