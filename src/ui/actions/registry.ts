import { planStore } from '../../state/planStore'
import { redo, undo } from '../../state/run'
import { sessionStore, setPreferences } from '../../state/sessionStore'
import { canTakeBack, canvasActions, takeBack } from '../canvas'
import {
  openDemo,
  openFromDevice,
  replacePhotoFromDevice,
  saveToDevice,
  startOwnJob,
  startWithStations,
} from '../files/jobFiles'
import { showDialog } from '../uiStore'
import type { Action } from './action'
import { toolActions, viewActions } from './toolActions'

const always = () => true

const hasPhotoSlab = (): boolean =>
  planStore.getState().plan.slabs.some(({ capture }) => capture.kind === 'photo')

/** An unfinished trace gives up its last point before a step of the plan is undone. */
function takeBackOrUndo(): void {
  if (!takeBack()) undo()
}

const OWN_ACTIONS = [
  {
    id: 'undo',
    label: 'action-undo',
    group: 'edit',
    shortcuts: [{ key: 'z', command: true }],
    isEnabled: () => canTakeBack() || planStore.getState().past.length > 0,
    perform: takeBackOrUndo,
  },
  {
    id: 'redo',
    label: 'action-redo',
    group: 'edit',
    shortcuts: [
      { key: 'z', command: true, shift: true },
      { key: 'y', command: true },
    ],
    isEnabled: () => planStore.getState().future.length > 0,
    perform: redo,
  },
  {
    id: 'start-own',
    label: 'action-start-own',
    group: 'job',
    shortcuts: [],
    isEnabled: always,
    perform: () => void startOwnJob('file'),
  },
  {
    id: 'take-photo',
    label: 'action-take-photo',
    group: 'job',
    shortcuts: [],
    isEnabled: always,
    perform: () => void startOwnJob('camera'),
  },
  {
    id: 'start-stations',
    label: 'action-start-stations',
    group: 'job',
    shortcuts: [],
    isEnabled: always,
    perform: () => void startWithStations(),
  },
  {
    id: 'replace-photo',
    label: 'action-replace-photo',
    group: 'job',
    shortcuts: [],
    isEnabled: hasPhotoSlab,
    perform: () => void replacePhotoFromDevice(),
  },
  {
    id: 'open-file',
    label: 'action-open-file',
    group: 'job',
    shortcuts: [{ key: 'o', command: true }],
    isEnabled: always,
    perform: () => void openFromDevice(),
  },
  {
    id: 'save-file',
    label: 'action-save-file',
    group: 'job',
    shortcuts: [{ key: 's', command: true }],
    isEnabled: always,
    perform: () => void saveToDevice(),
  },
  {
    id: 'show-jobs',
    label: 'action-show-jobs',
    group: 'job',
    shortcuts: [],
    isEnabled: always,
    perform: () => showDialog('jobs'),
  },
  {
    id: 'show-versions',
    label: 'action-show-versions',
    group: 'job',
    shortcuts: [],
    isEnabled: always,
    perform: () => showDialog('versions'),
  },
  {
    id: 'demo-library-table',
    label: 'action-demo-library-table',
    group: 'job',
    shortcuts: [],
    isEnabled: always,
    perform: () => void openDemo('library-table'),
  },
  {
    id: 'demo-kitchen-table',
    label: 'action-demo-kitchen-table',
    group: 'job',
    shortcuts: [],
    isEnabled: always,
    perform: () => void openDemo('kitchen-table'),
  },
  {
    id: 'toggle-bright',
    label: 'action-toggle-bright',
    group: 'look',
    shortcuts: [{ key: 'w' }],
    isEnabled: always,
    isPressed: () => sessionStore.getState().bright,
    perform: () => setPreferences({ bright: !sessionStore.getState().bright }),
  },
  {
    id: 'show-help',
    label: 'action-show-help',
    group: 'help',
    shortcuts: [{ key: '?' }],
    isEnabled: always,
    perform: () => showDialog('help'),
  },
] as const satisfies readonly Action[]

type OwnActionId = (typeof OWN_ACTIONS)[number]['id']
type CanvasActionId = (typeof canvasActions | typeof toolActions | typeof viewActions)[number]['id']

export type ActionId = OwnActionId | CanvasActionId

/** Everything the maker can do, once: toolbar, menu, shortcuts and help all read it here. */
export const ACTIONS: readonly Action[] = [...OWN_ACTIONS, ...viewActions, ...canvasActions, ...toolActions]
