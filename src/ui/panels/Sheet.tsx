import { type PointerEvent, useRef } from 'react'
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

/** The button that pulls the sheet up and down on a phone: by a tap or by a pull. Hidden on larger screens. */
function Grip({ height, onHeight }: Props) {
  const pulledFrom = useRef<number | null>(null)
  const isUp = height === 'high'
  const onPointerUp = (event: PointerEvent<HTMLButtonElement>) => {
    const from = pulledFrom.current
    const pulledPx = from === null ? 0 : event.clientY - from
    if (Math.abs(pulledPx) >= LEAST_PULL_PX) onHeight(stepped(height, pulledPx < 0 ? 1 : -1))
    else pulledFrom.current = null
  }
  const onClick = () => {
    // The click that ends a pull has been answered by the pull.
    if (pulledFrom.current === null) onHeight(isUp ? 'low' : stepped(height, 1))
    pulledFrom.current = null
  }
  return (
    <button
      type="button"
      className="grip"
      aria-label={t(isUp ? 'panel-down' : 'panel-up')}
      aria-expanded={height !== 'low'}
      onPointerDown={(event) => {
        pulledFrom.current = event.clientY
        event.currentTarget.setPointerCapture(event.pointerId)
      }}
      onPointerUp={onPointerUp}
      onPointerCancel={() => (pulledFrom.current = null)}
      onClick={onClick}
    >
      <GripIcon isUp={isUp} />
    </button>
  )
}

/** The panel beside the canvas; on a phone a sheet below it, pulled up and down by its grip. */
export function Sheet({ height, onHeight }: Props) {
  return (
    <aside className="panel" data-height={height} aria-label={t('panel-label')}>
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
