import type { Photo, Slab } from '../../core/plan'
import { removeLaterPhoto, setPhotoFace } from '../../state/commands'
import { run } from '../../state/run'
import { setPhotoId } from '../../state/sessionStore'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { addLaterPhotoFromDevice } from '../files/jobFiles'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { usePlanResult } from '../usePlanResult'
import { Figures } from './Figures'
import { PanelPart } from './PanelPart'
import { isFirstPhoto } from './photoOf'

interface Props {
  readonly slab: Slab
  readonly photo: Photo
}

/** Which of the slab's photos is on the canvas; nothing to choose while there is one. */
export function PhotoChoice({ slab, photo }: Props) {
  const photos = slab.capture.kind === 'photo' ? slab.capture.photos : []
  if (photos.length < 2) return null
  return (
    <ChoiceGroup
      label={t('later-looked-at')}
      value={photo.id}
      onChange={setPhotoId}
      options={photos.map(({ id, face }, n) => ({
        value: id,
        label:
          n === 0
            ? t('later-first')
            : t(face === 'top' ? 'later-number' : 'later-number-underside', { number: String(n + 1) }),
      }))}
    />
  )
}

/** What a later photo shows and how its marks fit, or how to come by one. */
export function LaterPhotos({ slab, photo }: Props) {
  const format = useFormat()
  const part = usePlanResult().slabs.get(slab.id)?.laterPhotos.get(photo.id)
  const at = { slabId: slab.id, photoId: photo.id }
  return (
    <PanelPart title={t('later-title')} note={t('later-note')}>
      <PhotoChoice slab={slab} photo={photo} />
      {!isFirstPhoto(slab, photo) && (
        <>
          <ChoiceGroup<Photo['face']>
            label={t('later-face')}
            value={photo.face}
            onChange={(face) => run(setPhotoFace, { ...at, face })}
            options={[
              { value: 'top', label: t('later-face-top') },
              { value: 'underside', label: t('later-face-underside') },
            ]}
          />
          {part?.state === 'ready' ? (
            <Figures
              rows={[
                { name: t('later-shared'), figure: String(part.value.sharedMarks) },
                { name: t('later-off'), figure: format.length(part.value.worstMm, { precision: 0.1 }) },
              ]}
            />
          ) : (
            <p>{t('later-set-marks')}</p>
          )}
        </>
      )}
      <div className="button-row">
        <button type="button" className="button" onClick={() => void addLaterPhotoFromDevice()}>
          {t('later-add')}
        </button>
        {!isFirstPhoto(slab, photo) && (
          <button type="button" className="button" onClick={() => run(removeLaterPhoto, at)}>
            {t('later-remove')}
          </button>
        )}
      </div>
    </PanelPart>
  )
}
