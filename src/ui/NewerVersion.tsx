import { useStore } from 'zustand'
import { leaveNewerForLater, programStore, takeNewer } from '../state/programVersion'
import { sessionStore } from '../state/sessionStore'
import { reporting } from './files/reporting'
import { t } from './text/t'

/** Says that a newer version lies ready. It comes when the maker says so, or when all windows were closed. */
export function NewerVersion() {
  const hasNewer = useStore(programStore, (program) => program.hasNewer)
  const hasNotice = useStore(sessionStore, (session) => session.notice !== null)
  return (
    <div role="status" className="notice-place">
      {hasNewer && !hasNotice && (
        <div className="notice">
          <p>{t('newer-ready')}</p>
          <button type="button" className="button button-small" onClick={() => void reporting(takeNewer)}>
            {t('newer-use')}
          </button>
          <button type="button" className="button button-small" onClick={leaveNewerForLater}>
            {t('newer-later')}
          </button>
        </div>
      )}
    </div>
  )
}
