import { planStore } from '../../state/planStore'
import { sessionStore, type ToolName, type ViewName, wholeBoard, wholeRule } from '../../state/sessionStore'
import type { StageName } from '../stages/stageNames'
import type { Action } from './action'

const isInHand = (tool: ToolName) => (): boolean => sessionStore.getState().tool === tool

const hasPhoto = (): boolean =>
  planStore.getState().plan.slabs.some(({ capture }) => capture.kind === 'photo')

const hasSlab = (): boolean => planStore.getState().plan.slabs.length > 0

/** Takes up a tool with the view and the stage in which it is used; what is in hand already is laid down again. */
function takeUp(tool: ToolName, stage: StageName, views: readonly [ViewName, ...ViewName[]]): void {
  const { tool: current, view } = sessionStore.getState()
  if (current === tool) sessionStore.setState({ tool: 'select' })
  else sessionStore.setState({ tool, stage, view: views.includes(view) ? view : views[0] })
}

/** The outline's tool with the line that clings to the edge; with a trace tool in hand it is only switched. */
function followEdge(): void {
  const { tool, followsEdge } = sessionStore.getState()
  const isTracing = tool === 'outline' || tool === 'void'
  sessionStore.setState({ followsEdge: !isTracing || !followsEdge })
  if (!isTracing) takeUp('outline', 'trace', ['photo'])
}

/** The outline's tool, point by point until the maker wants the line to cling to the edge. */
function traceByPoints(): void {
  sessionStore.setState({ followsEdge: false })
  takeUp('outline', 'trace', ['photo'])
}

/** The tools of the canvas. */
export const toolActions = [
  {
    id: 'tool-select',
    label: 'tool-select',
    group: 'tool',
    shortcuts: [{ key: 's' }],
    isEnabled: hasSlab,
    isPressed: isInHand('select'),
    perform: () => sessionStore.setState({ tool: 'select' }),
  },
  {
    id: 'tool-mark',
    label: 'tool-mark',
    group: 'tool',
    shortcuts: [{ key: 'm' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('mark'),
    perform: () => takeUp('mark', 'scale', ['photo']),
  },
  {
    id: 'tool-board',
    label: 'tool-board',
    group: 'tool',
    shortcuts: [{ key: 'b' }],
    isEnabled: () => hasPhoto() && wholeBoard(sessionStore.getState().boardSize) !== null,
    isPressed: isInHand('board'),
    perform: () => takeUp('board', 'scale', ['photo']),
  },
  {
    id: 'tool-rule',
    label: 'tool-rule',
    group: 'tool',
    shortcuts: [{ key: 'r' }],
    isEnabled: () => hasPhoto() && wholeRule(sessionStore.getState().ruleSize) !== null,
    isPressed: isInHand('rule'),
    perform: () => takeUp('rule', 'scale', ['photo']),
  },
  {
    id: 'tool-line',
    label: 'tool-line',
    group: 'tool',
    shortcuts: [{ key: 'l' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('line'),
    perform: () => takeUp('line', 'scale', ['photo']),
  },
  {
    id: 'tool-datum',
    label: 'tool-datum',
    group: 'tool',
    shortcuts: [{ key: 'd' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('datum'),
    perform: () => takeUp('datum', 'scale', ['photo']),
  },
  {
    id: 'tool-wood',
    label: 'tool-wood',
    group: 'tool',
    shortcuts: [{ key: 'k' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('wood'),
    perform: () => takeUp('wood', 'trace', ['photo']),
  },
  {
    id: 'tool-not-wood',
    label: 'tool-not-wood',
    group: 'tool',
    shortcuts: [{ key: 'n' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('notWood'),
    perform: () => takeUp('notWood', 'trace', ['photo']),
  },
  {
    id: 'tool-follow',
    label: 'tool-follow',
    group: 'tool',
    shortcuts: [{ key: 'f' }],
    isEnabled: hasPhoto,
    isPressed: () => isInHand('outline')() && sessionStore.getState().followsEdge,
    perform: followEdge,
  },
  {
    id: 'tool-outline',
    label: 'tool-outline',
    group: 'tool',
    shortcuts: [{ key: 'e' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('outline'),
    perform: traceByPoints,
  },
  {
    id: 'tool-void',
    label: 'tool-void',
    group: 'tool',
    shortcuts: [{ key: 'v' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('void'),
    perform: () => takeUp('void', 'trace', ['photo']),
  },
  {
    id: 'tool-push',
    label: 'tool-push',
    group: 'tool',
    shortcuts: [{ key: 'u' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('push'),
    perform: () => takeUp('push', 'trace', ['photo']),
  },
  {
    id: 'tool-smooth',
    label: 'tool-smooth',
    group: 'tool',
    shortcuts: [{ key: 'h' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('smooth'),
    perform: () => takeUp('smooth', 'trace', ['photo']),
  },
  {
    id: 'tool-straighten',
    label: 'tool-straighten',
    group: 'tool',
    shortcuts: [{ key: 'i' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('straighten'),
    perform: () => takeUp('straighten', 'trace', ['photo']),
  },
  {
    id: 'tool-redraw',
    label: 'tool-redraw',
    group: 'tool',
    shortcuts: [{ key: 'g' }],
    isEnabled: hasPhoto,
    isPressed: isInHand('redraw'),
    perform: () => takeUp('redraw', 'trace', ['photo']),
  },
  {
    id: 'tool-footprint',
    label: 'tool-footprint',
    group: 'tool',
    shortcuts: [{ key: 't' }],
    isEnabled: hasSlab,
    isPressed: isInHand('footprint'),
    perform: () => takeUp('footprint', 'table', ['above', 'photo']),
  },
  {
    id: 'tool-piece',
    label: 'tool-piece',
    group: 'tool',
    shortcuts: [{ key: 'p' }],
    isEnabled: hasSlab,
    isPressed: isInHand('piece'),
    perform: () => takeUp('piece', 'cuts', ['table']),
  },
] as const satisfies readonly Action[]

const isSeen = (view: ViewName) => (): boolean => sessionStore.getState().view === view

/** A tool belongs to its view, so it is laid down. */
const look = (view: ViewName): void => sessionStore.setState({ view, tool: 'select' })

/** The views of the canvas. */
export const viewActions = [
  {
    id: 'view-photo',
    label: 'view-photo',
    group: 'look',
    shortcuts: [{ key: '1' }],
    isEnabled: hasSlab,
    isPressed: isSeen('photo'),
    perform: () => look('photo'),
  },
  {
    id: 'view-above',
    label: 'view-above',
    group: 'look',
    shortcuts: [{ key: '2' }],
    isEnabled: hasSlab,
    isPressed: isSeen('above'),
    perform: () => look('above'),
  },
  {
    id: 'view-table',
    label: 'view-table',
    group: 'look',
    shortcuts: [{ key: '3' }],
    isEnabled: hasSlab,
    isPressed: isSeen('table'),
    perform: () => look('table'),
  },
  {
    id: 'show-weak',
    label: 'view-weak',
    group: 'look',
    shortcuts: [{ key: '4' }],
    isEnabled: hasPhoto,
    isPressed: () => sessionStore.getState().showsWeak,
    perform: () => sessionStore.setState(({ showsWeak }) => ({ showsWeak: !showsWeak })),
  },
] as const satisfies readonly Action[]
