import { useState } from 'react'
import { slabPointFromPx } from '../../core/photo'
import type { SlabScaleResult, Trace } from '../../core/plan'
import { thinnedRing } from '../../core/trace'
import { replaceTraceRing } from '../../state/commands'
import { run } from '../../state/run'
import { ActionButton } from '../actions/ActionButton'
import { LengthField } from '../fields/LengthField'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { PanelPart } from './PanelPart'

interface Props {
  readonly slabId: string
  readonly outline: Trace
  /** Null while the photo has no size: then nothing can be told in mm. */
  readonly scale: SlabScaleResult | null
}

/** Finer than any saw, coarser than the photo's own noise. Common practice, no source. */
const USUAL_TOLERANCE_MM = 1
const TOLERANCE_LIMITS = { leastMm: 0.05, greatestMm: 50 }

/** Tools that mend a line that is there, and thinning to a stated tolerance. */
export function MendPart({ slabId, outline, scale }: Props) {
  return (
    <PanelPart title={t('mend-title')} note={t('mend-note')}>
      <div className="button-row">
        <ActionButton id="tool-push" />
        <ActionButton id="tool-redraw" />
        <ActionButton id="tool-smooth" />
        <ActionButton id="tool-straighten" />
      </div>
      {scale !== null && <ThinFields slabId={slabId} outline={outline} scale={scale} />}
    </PanelPart>
  )
}

function ThinFields({ slabId, outline, scale }: Props & { readonly scale: SlabScaleResult }) {
  const format = useFormat()
  const [toleranceMm, setToleranceMm] = useState(USUAL_TOLERANCE_MM)
  const thinned = thinnedRing(outline.ringPx, toleranceMm, (at) => slabPointFromPx(scale.frame, at))
  const isSame = thinned.ringPx.length === outline.ringPx.length
  return (
    <>
      <LengthField
        label={t('thin-tolerance')}
        valueMm={toleranceMm}
        limits={TOLERANCE_LIMITS}
        onChange={setToleranceMm}
      />
      <p role="status">
        {isSame
          ? t('thin-nothing')
          : t('thin-would', {
              before: String(outline.ringPx.length),
              after: String(thinned.ringPx.length),
              change: format.area(thinned.area.changeMm2),
            })}
      </p>
      <div className="button-row">
        <button
          type="button"
          className="button"
          disabled={isSame}
          onClick={() => run(replaceTraceRing, { slabId, traceId: outline.id, ringPx: [...thinned.ringPx] })}
        >
          {t('thin-do')}
        </button>
      </div>
    </>
  )
}
