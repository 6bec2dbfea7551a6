import { useState } from 'react'
import type { DrawingFrame } from '../../../core/plan'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { handOut } from '../../files/handOut'
import { t } from '../../text/t'
import { PanelPart } from '../PanelPart'
import { paperWork } from './paperWork'
import { takeAwayFile, type TakeAwayKind } from './takeAwayFiles'

const KINDS = ['svg', 'dxf', 'cuts', 'parts', 'json'] as const satisfies readonly TakeAwayKind[]

/** Drawings and results as files for other programs. */
export function TakeAwayPart() {
  const [frame, setFrame] = useState<DrawingFrame>('slab')
  const [isEmpty, setEmpty] = useState(false)
  const take = (kind: TakeAwayKind) => {
    const work = paperWork()
    setEmpty(work === null)
    if (work === null) return
    const file = takeAwayFile(kind, work, frame)
    handOut(file.blob, file.name)
  }
  return (
    <PanelPart title={t('take-away')} note={t('take-away-note')}>
      <ChoiceGroup<DrawingFrame>
        label={t('take-away-frame')}
        value={frame}
        onChange={setFrame}
        options={[
          { value: 'slab', label: t('take-away-frame-slab') },
          { value: 'table', label: t('take-away-frame-table') },
        ]}
      />
      <div className="button-row">
        {KINDS.map((kind) => (
          <button key={kind} type="button" className="button" onClick={() => take(kind)}>
            {t(`take-away-${kind}`)}
          </button>
        ))}
      </div>
      {isEmpty && <p role="status">{t('take-away-none')}</p>}
    </PanelPart>
  )
}
