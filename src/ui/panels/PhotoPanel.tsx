import type { Slab } from '../../core/plan'
import { run } from '../../state/run'
import { renameSlab, setSlabFacts, type SlabFacts } from '../../state/commands'
import { ActionButton } from '../actions/ActionButton'
import { OptionalLengthField } from '../fields/LengthField'
import { UnitsChoice } from '../header/MenuChoices'
import { MoneyField } from '../fields/MoneyField'
import { TextField } from '../fields/TextField'
import { goToStage } from '../stages/goToStage'
import { t } from '../text/t'
import { useSlab } from '../useActive'
import { Figures } from './Figures'
import { PanelPart } from './PanelPart'
import { PhotoChecks } from './PhotoChecks'
import { PhotoGuide } from './PhotoGuide'
import { LaterPhotos } from './LaterPhotos'
import { isFirstPhoto, usePhotoOf } from './photoOf'

/** Thicker than any slab that is sold: a figure in other units was meant, mm. */
const GREATEST_THICKNESS_MM = 400

function SlabFields({ slab }: { readonly slab: Slab }) {
  const set = (facts: Partial<SlabFacts>) => run(setSlabFacts, { slabId: slab.id, facts })
  const isFresh = slab.marks.length === 0
  return (
    <PanelPart title={t('photo-slab')}>
      {isFresh && <UnitsChoice />}
      <OptionalLengthField
        label={t('photo-slab-thickness')}
        hint={t('photo-slab-thickness-hint')}
        placeholder={t('photo-slab-not-measured')}
        valueMm={slab.thicknessMm}
        limits={{ leastMm: 5, greatestMm: GREATEST_THICKNESS_MM }}
        onChange={(thicknessMm) => set({ thicknessMm })}
      />
      {isFresh && (
        <div className="button-row">
          <button type="button" className="button button-main" onClick={() => goToStage('scale')}>
            {t('photo-go-on')}
          </button>
        </div>
      )}
      <TextField
        label={t('photo-slab-name')}
        value={slab.name}
        needed
        onChange={(name) => run(renameSlab, { slabId: slab.id, name })}
      />
      <div className="field-pairs">
        <MoneyField
          label={t('photo-slab-price')}
          cents={slab.priceCents}
          onChange={(priceCents) => set({ priceCents })}
        />
        <TextField
          label={t('photo-slab-species')}
          value={slab.species ?? ''}
          onChange={(species) => set({ species: species === '' ? null : species })}
        />
        <TextField label={t('photo-slab-tag')} value={slab.tag} onChange={(tag) => set({ tag })} />
      </div>
    </PanelPart>
  )
}

function PhotoFacts({ slab }: { readonly slab: Slab }) {
  const photo = usePhotoOf(slab)
  if (photo === null) return null
  return (
    <>
      <PanelPart title={t('photo-file')} note={t('photo-location-removed')}>
        <Figures
          rows={[
            { name: t('photo-file-name'), figure: photo.fileName },
            {
              name: t('photo-file-size'),
              figure: t('photo-pixels', {
                width: String(photo.widthPx),
                height: String(photo.heightPx),
                megapixels: ((photo.widthPx * photo.heightPx) / 1e6).toFixed(1),
              }),
            },
          ]}
        />
        <PhotoChecks photo={photo} />
        {isFirstPhoto(slab, photo) && (
          <div className="button-row">
            <ActionButton id="replace-photo" />
          </div>
        )}
      </PanelPart>
      <LaterPhotos slab={slab} photo={photo} />
    </>
  )
}

/** The slab that the photo shows, and the photo itself. */
export function PhotoPanel() {
  const slab = useSlab()
  return (
    <>
      {slab === null && <PhotoGuide />}
      <div className="button-row">
        <ActionButton id="start-own" className={slab === null ? 'button-main' : ''} />
        <ActionButton id="take-photo" className={`only-touch ${slab === null ? 'button-main' : ''}`} />
        <ActionButton id="start-stations" />
      </div>
      {slab !== null && (
        <>
          <SlabFields slab={slab} />
          <PhotoFacts slab={slab} />
          <details className="more">
            <summary>{t('guide-title')}</summary>
            <PhotoGuide />
          </details>
        </>
      )}
    </>
  )
}
