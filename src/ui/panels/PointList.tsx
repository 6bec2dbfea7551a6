import { useState } from 'react'
import { useStore } from 'zustand'
import { slabPoint } from '../../core/geometry'
import { pxFromSlabPoint, slabPointFromPx } from '../../core/photo'
import type { SlabScaleResult, Trace } from '../../core/plan'
import { deleteTracePoint, moveTracePoint } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { LengthField } from '../fields/LengthField'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'

interface Props {
  readonly slabId: string
  readonly trace: Trace
  readonly scale: SlabScaleResult
}

const PLACE_LIMITS = { leastMm: -20_000, greatestMm: 20_000 }

interface PointProps extends Props {
  readonly index: number
}

/** The point that is selected: where it lies along and off the datum, to be typed. */
function PointFields({ slabId, trace, scale, index }: PointProps) {
  const atPx = trace.ringPx[index]
  if (atPx === undefined) return null
  const [alongMm, offMm] = slabPointFromPx(scale.frame, atPx)
  const move = (toAlongMm: number, toOffMm: number) => {
    const toPx = pxFromSlabPoint(scale.frame, slabPoint(toAlongMm, toOffMm))
    run(moveTracePoint, { slabId, traceId: trace.id, index, atPx: toPx })
  }
  return (
    <div className="field-grid">
      <LengthField
        label={t('edge-point-along')}
        valueMm={alongMm}
        limits={PLACE_LIMITS}
        onChange={(mm) => move(mm, offMm)}
      />
      <LengthField
        label={t('edge-point-off')}
        valueMm={offMm}
        limits={PLACE_LIMITS}
        onChange={(mm) => move(alongMm, mm)}
      />
      <button
        type="button"
        className="button"
        onClick={() => run(deleteTracePoint, { slabId, traceId: trace.id, index })}
      >
        {t('edge-point-delete')}
      </button>
    </div>
  )
}

function PointButtons({ slabId, trace, scale }: Props) {
  const format = useFormat()
  const selected = useStore(sessionStore, ({ selection }) =>
    selection?.kind === 'trace' && selection.traceId === trace.id ? selection.point : null,
  )
  const select = (index: number) =>
    sessionStore.setState({ selection: { kind: 'trace', traceId: trace.id, point: index } })
  return (
    <>
      <ol className="object-list">
        {trace.ringPx.map((atPx, index) => {
          const [alongMm, offMm] = slabPointFromPx(scale.frame, atPx)
          return (
            // A point has no name but its place in the ring.
            <li key={`${trace.id} ${index}`}>
              <button type="button" aria-pressed={index === selected} onClick={() => select(index)}>
                <span>{t('edge-point', { number: String(index + 1) })}</span>
                <span className="object-where">
                  {format.length(alongMm)}, {format.length(offMm)}
                </span>
              </button>
            </li>
          )
        })}
      </ol>
      {selected !== null && <PointFields slabId={slabId} trace={trace} scale={scale} index={selected} />}
    </>
  )
}

/** All points of a trace, for work by keyboard. Filled only while it is open: an outline has hundreds. */
export function PointList(props: Props) {
  const [isOpen, setOpen] = useState(false)
  return (
    <details className="more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{t('edge-points', { count: String(props.trace.ringPx.length) })}</summary>
      {isOpen && <PointButtons {...props} />}
    </details>
  )
}
