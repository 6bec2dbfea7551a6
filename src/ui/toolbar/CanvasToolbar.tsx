import { useStore } from 'zustand'
import { sessionStore, wholeBoard, wholeRule } from '../../state/sessionStore'
import { ActionButton } from '../actions/ActionButton'
import type { ActionId } from '../actions/registry'
import type { StageName } from '../stages/stageNames'
import { t } from '../text/t'

const VIEWS: readonly ActionId[] = ['view-photo', 'view-above', 'view-table']

const TOOLS_AT: Readonly<Record<StageName, readonly ActionId[]>> = {
  slabs: [],
  photo: [],
  scale: ['tool-select', 'tool-mark', 'tool-board', 'tool-rule', 'tool-line', 'tool-datum'],
  trace: ['tool-select', 'tool-wood', 'tool-not-wood', 'tool-outline', 'tool-void'],
  table: ['tool-select', 'tool-footprint'],
  cuts: ['tool-select', 'tool-piece'],
  pour: [],
  form: [],
  price: [],
  paper: [],
}

/** On a phone these are taken up from the panel, or by putting another down. */
const IN_PANEL_ON_PHONE: ReadonlySet<ActionId> = new Set<ActionId>(['tool-select', 'tool-rule', 'tool-line'])

/**
 * Over the canvas: how it is looked at, and the tools of the stage. On a phone, who draws point by point sees the tool in
 * hand alone, which lays it down again: the rest would cover the edge.
 */
export function CanvasToolbar() {
  const stage = useStore(sessionStore, (session) => session.stage)
  const hasBoardSize = useStore(sessionStore, ({ boardSize }) => wholeBoard(boardSize) !== null)
  const hasRuleSize = useStore(sessionStore, ({ ruleSize }) => wholeRule(ruleSize) !== null)
  // A board or rule is sized in the panel first: until then there is nothing to tap.
  const tools = TOOLS_AT[stage].filter(
    (id) => (id !== 'tool-board' || hasBoardSize) && (id !== 'tool-rule' || hasRuleSize),
  )
  const isDrawing = useStore(sessionStore, ({ tool }) => tool === 'outline' || tool === 'void')
  return (
    <div className="canvas-toolbar" data-drawing={isDrawing ? '' : undefined}>
      <div role="group" aria-label={t('views-label')} className="segments">
        {VIEWS.map((id) => (
          <ActionButton key={id} id={id} />
        ))}
      </div>
      {tools.length > 0 && (
        <div role="group" aria-label={t('tools-label')} className="segments">
          {tools.map((id) => (
            <ActionButton key={id} id={id} className={IN_PANEL_ON_PHONE.has(id) ? 'not-on-phone' : ''} />
          ))}
        </div>
      )}
    </div>
  )
}
