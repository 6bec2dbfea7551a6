import { useMemo } from 'react'
import { useStore } from 'zustand'
import {
  type ScaleAdvice,
  scaleAdvice,
  type Slab,
  type SlabScaleResult,
  WEAK_BANDS_MM,
} from '../../core/plan'
import { sessionStore } from '../../state/sessionStore'
import { ActionButton } from '../actions/ActionButton'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { PanelPart } from './PanelPart'

interface Props {
  readonly slab: Slab
  readonly scale: SlabScaleResult
}

function adviceText({ kind, markNames }: ScaleAdvice): string {
  const [from = '', to = ''] = markNames
  return kind === 'tape-distance' ? t('sure-tape', { from, to }) : t(`sure-${kind}`)
}

/** How the map's lines are read, as long as it is shown. */
function WeakMapKey() {
  const format = useFormat()
  const isShown = useStore(sessionStore, (session) => session.showsWeak)
  if (!isShown) return null
  const [bare, ...steps] = WEAK_BANDS_MM.map((mm) => format.length(mm))
  return <p className="note">{t('sure-map', { bare: bare ?? '', steps: steps.join(', ') })}</p>
}

/** How sure lengths over the slab are, what would help most, and the map of where the photo is weak. */
export function AccuracyPart({ slab, scale }: Props) {
  const format = useFormat()
  const advice = useMemo(() => scaleAdvice(slab, scale), [slab, scale])
  return (
    <PanelPart title={t('sure-title')} note={t('sure-note')}>
      {advice === null ? (
        <p>{t('sure-nothing')}</p>
      ) : (
        <p>
          {t('sure-help', {
            advice: adviceText(advice),
            now: format.plusMinus(advice.sdNowMm, 'length') ?? '',
            after: format.plusMinus(advice.sdThenMm, 'length') ?? '',
          })}
        </p>
      )}
      <div className="button-row">
        <ActionButton id="show-weak" />
      </div>
      <WeakMapKey />
    </PanelPart>
  )
}
