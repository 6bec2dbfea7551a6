import { useStore } from 'zustand'
import type { Slab } from '../../core/plan'
import { removeMark, renameMark, setMarkHeight } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { ActionButton } from '../actions/ActionButton'
import { LengthField } from '../fields/LengthField'
import { TextField } from '../fields/TextField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { ClickSign } from './ClickSign'
import { PanelPart } from './PanelPart'
import { isFirstPhoto, usePhotoOf } from './photoOf'
import { tapedMarks } from './tapedPairs'

/** A mark may stand on something, but not higher than this above the slab's face. */
const HEIGHT_LIMITS = { leastMm: 0, greatestMm: 500 }

function MarkRow({ slab, mark }: { readonly slab: Slab; readonly mark: Slab['marks'][number] }) {
  const at = { slabId: slab.id, markId: mark.id }
  const photo = usePhotoOf(slab)
  const seen = photo?.observations.find(({ markId }) => markId === mark.id)
  return (
    <>
      <tr data-place={placeName('marks', mark.id)} className={seen === undefined ? undefined : 'row-goes-on'}>
        <td>
          <TextField
            label={t('size-mark-name', { name: mark.name })}
            labelHidden
            needed
            value={mark.name}
            onChange={(name) => run(renameMark, { ...at, name })}
          />
        </td>
        <td>
          <LengthField
            label={t('size-mark-height', { name: mark.name })}
            labelHidden
            valueMm={mark.heightMm}
            limits={HEIGHT_LIMITS}
            onChange={(heightMm) => run(setMarkHeight, { ...at, heightMm })}
          />
        </td>
        <td className="number">
          {photo === null || isFirstPhoto(slab, photo) ? (
            <button type="button" className="button button-small" onClick={() => run(removeMark, at)}>
              {t('remove')}
              <span className="unseen"> {mark.name}</span>
            </button>
          ) : (
            seen === undefined && <SetAgain mark={mark} />
          )}
        </td>
      </tr>
      {photo !== null && seen !== undefined && (
        <tr>
          <td colSpan={3}>
            <ClickSign slab={slab} photo={photo} seen={seen} name={mark.name} />
          </td>
        </tr>
      )}
    </>
  )
}

/** On a later photo: which mark the next tap sets; some of them are gone by then. */
function SetAgain({ mark }: { readonly mark: Slab['marks'][number] }) {
  const isNext = useStore(
    sessionStore,
    ({ selection }) => selection?.kind === 'mark' && selection.markId === mark.id,
  )
  const choose = () =>
    sessionStore.setState({ tool: 'mark', view: 'photo', selection: { kind: 'mark', markId: mark.id } })
  return (
    <button type="button" className="button button-small" aria-pressed={isNext} onClick={choose}>
      {t('later-set-mark')}
      <span className="unseen"> {mark.name}</span>
    </button>
  )
}

/** The marks on the slab: their names, and how high they stand above its face. */
export function MarksPart({ slab }: { readonly slab: Slab }) {
  const names = new Set(tapedMarks(slab).map(({ id }) => id))
  const marks = slab.marks.filter(({ id }) => names.has(id))
  return (
    <PanelPart title={t('size-marks')} note={t('size-marks-note')}>
      {marks.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">{t('size-column-mark')}</th>
              <th scope="col">{t('size-column-height')}</th>
              <th scope="col">
                <span className="unseen">{t('remove')}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {marks.map((mark) => (
              <MarkRow key={mark.id} slab={slab} mark={mark} />
            ))}
          </tbody>
        </table>
      )}
      <div className="button-row">
        <ActionButton
          id="tool-mark"
          label={t('size-place-mark')}
          className={marks.length < 4 ? 'button-main' : ''}
        />
      </div>
    </PanelPart>
  )
}
