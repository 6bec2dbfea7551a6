import { ActionButton } from '../actions/ActionButton'
import { t } from '../text/t'

/** Instead of a panel that has nothing to work on. */
export function NoPhotoYet() {
  return (
    <>
      <p>{t('photo-none-yet')}</p>
      <div className="button-row">
        <ActionButton id="start-own" className="button-main" />
        <ActionButton id="take-photo" className="only-touch" />
        <ActionButton id="start-stations" />
      </div>
    </>
  )
}
