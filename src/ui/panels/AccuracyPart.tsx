import { useMemo } from 'react'
import { type ScaleAdvice, scaleAdvice, type Slab, type SlabScaleResult } from '../../core/plan'
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
    </PanelPart>
  )
}
