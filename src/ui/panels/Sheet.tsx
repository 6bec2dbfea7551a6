import { type MouseEvent, type PointerEvent, useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'
import { sessionStore } from '../../state/sessionStore'
import { GripIcon } from '../icons'
import { DecidingStrip } from '../strip/DecidingStrip'
import { t } from '../text/t'
import { ObjectList } from './ObjectList'
import { StagePanel } from './StagePanel'

export type SheetHeight = 'low' | 'half' | 'high'

const HEIGHTS: readonly SheetHeight[] = ['low', 'half', 'high']
/** A pull shorter than this is a tap, CSS px. */
const LEAST_PULL_PX = 24

interface Props {
  readonly height: SheetHeight
  readonly onHeight: (height: SheetHeight) => void
}

const stepped = (height: SheetHeight, by: 1 | -1): SheetHeight =>
  HEIGHTS[Math.min(HEIGHTS.length - 1, Math.max(0, HEIGHTS.indexOf(height) + by))] ?? height

/** The click that follows a press by mouse is the same press, ms. */
const SAME_PRESS_MS = 700

/** The button that pulls the sheet up and down on a phone: by a tap or by a pull. Hidden on larger screens. */
function Grip({ height, onHeight }: Props) {
  const press = useRef({ fromPx: 0, endedAtMs: -Infinity })
  const isUp = height === 'high'
  const step = () => onHeight(isUp ? 'low' : stepped(height, 1))
  const onPointerUp = (event: PointerEvent<HTMLButtonElement>) => {
    const pulledPx = event.clientY - press.current.fromPx
    press.current.endedAtMs = event.timeStamp
    if (Math.abs(pulledPx) < LEAST_PULL_PX) step()
    else onHeight(stepped(height, pulledPx < 0 ? 1 : -1))
  }
  const onClick = (event: MouseEvent) => {
    if (event.timeStamp - press.current.endedAtMs > SAME_PRESS_MS) step()
  }
  return (
    <button
      type="button"
      className="grip"
      aria-label={t(isUp ? 'panel-down' : 'panel-up')}
      aria-expanded={height !== 'low'}
      onPointerDown={(event) => {
        press.current.fromPx = event.clientY
        event.currentTarget.setPointerCapture(event.pointerId)
      }}
      onPointerUp={onPointerUp}
      // Or the browser would send a click to whatever lies under the finger once the sheet has moved.
      onTouchEnd={(event) => event.cancelable && event.preventDefault()}
      onClick={onClick}
    >
      <GripIcon isUp={isUp} />
    </button>
  )
}

/** Another stage starts at its top. Which of the boxes scrolls depends on the screen, so all of them go back. */
function useTopOfStage() {
  const panel = useRef<HTMLElement>(null)
  const stage = useStore(sessionStore, (session) => session.stage)
  useLayoutEffect(() => {
    const boxes = panel.current?.querySelectorAll('.panel-body, .panel-scroll') ?? []
    for (const box of [panel.current, ...boxes]) box?.scrollTo?.({ top: 0 })
  }, [stage])
  return panel
}

/** The panel beside the canvas; on a phone a sheet below it, pulled up and down by its grip. */
export function Sheet({ height, onHeight }: Props) {
  const panel = useTopOfStage()
  return (
    <aside ref={panel} className="panel" data-height={height} aria-label={t('panel-label')}>
      <div className="sheet-head">
        <DecidingStrip />
        <Grip height={height} onHeight={onHeight} />
      </div>
      <div className="panel-body">
        <div className="panel-scroll">
          <StagePanel />
        </div>
        <ObjectList />
      </div>
    </aside>
  )
}
