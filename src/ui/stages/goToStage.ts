import type { Issue, PlanPath } from '../../core/plan'
import { planStore } from '../../state/planStore'
import { type Selection, sessionStore, type ViewName } from '../../state/sessionStore'
import { planResultOf } from '../usePlanResult'
import type { StageName } from './stageNames'
import { stageOfIssue } from './stageOfIssue'

const SEEN_ON_PHOTO: readonly StageName[] = ['photo', 'scale', 'trace']

interface Known {
  readonly isTaped: boolean
  readonly hasScale: boolean
}

/** The paper leaves the view as it is, and so does a stage whose own view has nothing to show yet. */
function fittingView(stage: StageName, view: ViewName, { isTaped, hasScale }: Known): ViewName {
  const fitting = SEEN_ON_PHOTO.includes(stage) && !isTaped ? 'photo' : 'above'
  return stage === 'paper' || (fitting === 'above' && !hasScale) ? view : fitting
}

/** Turns to a stage: its panel opens, and the canvas shows the view in which its work is done. */
export function goToStage(stage: StageName): void {
  const { slabId, view } = sessionStore.getState()
  const { plan } = planStore.getState()
  const slab = plan.slabs.find(({ id }) => id === slabId) ?? plan.slabs[0]
  const isTaped = slab?.capture.kind === 'stations'
  const hasScale = isTaped || planResultOf(plan).slabs.get(slab?.id ?? '')?.scale.state === 'ready'
  sessionStore.setState({
    stage,
    notice: null,
    tool: 'select',
    view: fittingView(stage, view, { isTaped, hasScale }),
  })
}

const SELECTION_OF_LIST: Readonly<Record<string, (id: string) => Selection>> = {
  marks: (markId) => ({ kind: 'mark', markId }),
  tapedDistances: (distanceId) => ({ kind: 'distance', distanceId }),
  boards: (boardId) => ({ kind: 'board', boardId }),
  rules: (ruleId) => ({ kind: 'rule', ruleId }),
  straightLines: (lineId) => ({ kind: 'line', lineId, point: null }),
  traces: (traceId) => ({ kind: 'trace', traceId, point: null }),
  cuts: (cutId) => ({ kind: 'cut', cutId }),
  placements: (placementId) => ({ kind: 'placement', placementId }),
}

/** What an issue speaks of, as something that can be selected; null when it is the slab or table as a whole. */
function selectionOf([, , list, id]: PlanPath): Selection | null {
  if (list === undefined || id === undefined) return null
  const make = SELECTION_OF_LIST[list]
  return make === undefined ? null : make(id)
}

/** Name of a place in a panel, as its rows carry it: list and id, `tapedDistances/d4`. */
export const placeName = (list: string, id: string): string => `${list}/${id}`

function focusPlace(place: string): void {
  const row = document.querySelector(`[data-place="${CSS.escape(place)}"]`)
  const box = row?.querySelector<HTMLElement>('input, button')
  box?.focus()
}

/** Opens the stage where an issue is put right, selects what it speaks of and puts the focus there. */
export function goToIssue(issue: Issue): void {
  goToStage(stageOfIssue(issue.code))
  const selection = selectionOf(issue.at)
  if (selection !== null) sessionStore.setState({ selection })
  const [, , list, id] = issue.at
  // The panel of the stage is drawn first.
  if (list !== undefined && id !== undefined) requestAnimationFrame(() => focusPlace(placeName(list, id)))
}
