import { useState } from 'react'
import type { Slab, SlabScaleResult } from '../../core/plan'
import { ActionButton } from '../actions/ActionButton'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { useSlab } from '../useActive'
import { usePlanResult } from '../usePlanResult'
import { BoardPart } from './BoardPart'
import { DistancesPart } from './DistancesPart'
import { Figures } from './Figures'
import { MarksPart } from './MarksPart'
import { NoPhotoYet } from './NoPhotoYet'
import { PanelPart } from './PanelPart'
import { photoOf } from './photoOf'

type Reference = 'marks' | 'board'

/** The chalked line from which everything on the slab is measured. */
function DatumPart({ scale }: { readonly scale: SlabScaleResult | null }) {
  const format = useFormat()
  return (
    <PanelPart title={t('datum-title')} note={t('datum-note')}>
      {scale !== null && (
        <Figures
          rows={[
            { name: t('datum-length'), figure: format.length(scale.datum.lengthMm, { precision: 0.1 }) },
            { name: t('size-one-pixel'), figure: format.length(1 / scale.pxPerMm, { precision: 0.1 }) },
          ]}
        />
      )}
      <div className="button-row">
        <ActionButton id="tool-datum" label={t('datum-draw')} />
      </div>
    </PanelPart>
  )
}

function SizeOf({ slab }: { readonly slab: Slab }) {
  const [chosen, setChosen] = useState<Reference | null>(null)
  const part = usePlanResult().slabs.get(slab.id)?.scale
  const scale = part?.state === 'ready' ? part.value : null
  const reference = chosen ?? (slab.boards.length > 0 ? 'board' : 'marks')
  return (
    <>
      <ChoiceGroup<Reference>
        label={t('size-reference')}
        value={reference}
        onChange={setChosen}
        options={[
          { value: 'marks', label: t('size-reference-marks') },
          { value: 'board', label: t('size-reference-board') },
        ]}
      />
      {reference === 'marks' ? (
        <>
          <MarksPart slab={slab} />
          <DistancesPart slab={slab} scale={scale} />
        </>
      ) : (
        <BoardPart slab={slab} scale={scale} />
      )}
      <DatumPart scale={scale} />
    </>
  )
}

/** How large the slab is: taped distances between marks, or a board of known size. */
export function SizePanel() {
  const slab = useSlab()
  if (slab === null || photoOf(slab) === null) return <NoPhotoYet />
  return <SizeOf slab={slab} key={slab.id} />
}
