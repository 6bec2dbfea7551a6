import { useState } from 'react'
import type { Slab, SlabScaleResult } from '../../core/plan'
import { sessionStore, type ToolName } from '../../state/sessionStore'
import { ActionButton } from '../actions/ActionButton'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { useSlab } from '../useActive'
import { usePlanResult } from '../usePlanResult'
import { AccuracyPart } from './AccuracyPart'
import { BoardPart } from './BoardPart'
import { DistancesPart } from './DistancesPart'
import { Figures } from './Figures'
import { FlatnessPart } from './FlatnessPart'
import { LinesPart } from './LinesPart'
import { MarksPart } from './MarksPart'
import { NoPhotoYet } from './NoPhotoYet'
import { PanelPart } from './PanelPart'
import { PhotoChoice } from './LaterPhotos'
import { usePhotoOf } from './photoOf'
import { RulePart } from './RulePart'

type Reference = 'marks' | 'board' | 'rule'

/** The chalked line from which everything on the slab is measured. */
function DatumPart({ scale }: { readonly scale: SlabScaleResult | null }) {
  const format = useFormat()
  return (
    <PanelPart title={t('datum-title')} note={t('datum-note')}>
      {scale !== null && (
        <Figures
          rows={[
            {
              name: t('datum-length'),
              figure: format.length(scale.datum.lengthMm, { precision: 0.1 }),
              plusMinus: format.plusMinus(scale.datum.sdMm, 'length'),
            },
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

/** What is said already; all kinds count together, whichever is shown. */
function referenceOf(slab: Slab): Reference {
  if (slab.boards.length > 0) return 'board'
  return slab.rules.length > 0 ? 'rule' : 'marks'
}

/** Whoever comes with a board or a rule in hand lays that one. */
const referenceInHand = (tool: ToolName): Reference | null =>
  tool === 'board' || tool === 'rule' ? tool : null

interface SlabScale {
  readonly slab: Slab
  readonly scale: SlabScaleResult | null
}

/** What is known in the photo, by its kind. */
function ReferenceParts({ reference, slab, scale }: SlabScale & { readonly reference: Reference }) {
  if (reference === 'board') return <BoardPart slab={slab} scale={scale} />
  if (reference === 'rule') return <RulePart slab={slab} />
  return (
    <>
      <MarksPart slab={slab} />
      <DistancesPart slab={slab} scale={scale} />
    </>
  )
}

function SizeOf({ slab }: { readonly slab: Slab }) {
  const [chosen, setChosen] = useState(() => referenceInHand(sessionStore.getState().tool))
  const part = usePlanResult().slabs.get(slab.id)?.scale
  const scale = part?.state === 'ready' ? part.value : null
  const reference = chosen ?? referenceOf(slab)
  const photo = usePhotoOf(slab)
  return (
    <>
      {photo !== null && <PhotoChoice slab={slab} photo={photo} />}
      <ChoiceGroup<Reference>
        label={t('size-reference')}
        value={reference}
        onChange={setChosen}
        options={[
          { value: 'marks', label: t('size-reference-marks') },
          { value: 'board', label: t('size-reference-board') },
          { value: 'rule', label: t('size-reference-rule') },
        ]}
      />
      <ReferenceParts reference={reference} slab={slab} scale={scale} />
      {photo !== null && <LinesPart slab={slab} photo={photo} />}
      <FlatnessPart slab={slab} />
      {scale !== null && <AccuracyPart slab={slab} scale={scale} />}
      <DatumPart scale={scale} />
    </>
  )
}

/** How large the slab is: taped distances between marks, or a board of known size. */
export function SizePanel() {
  const slab = useSlab()
  const photo = usePhotoOf(slab)
  if (slab?.capture.kind === 'stations') return <p>{t('size-by-stations')}</p>
  if (slab === null || photo === null) return <NoPhotoYet />
  return <SizeOf slab={slab} key={slab.id} />
}
