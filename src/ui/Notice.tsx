import { useStore } from 'zustand'
import { sessionStore, setNotice } from '../state/sessionStore'
import { t } from './text/t'
import { useDescribeProblem } from './text/useDescribeProblem'

/** One message at a time, read out politely; it stays until it is closed or another one comes. */
export function Notice() {
  const notice = useStore(sessionStore, (session) => session.notice)
  const describe = useDescribeProblem()
  return (
    <div role="status" className="notice-place">
      {notice !== null && (
        <div className="notice">
          <p>{describe(notice)}</p>
          <button type="button" className="button button-small" onClick={() => setNotice(null)}>
            {t('close')}
            <span className="unseen"> {t('notice-close')}</span>
          </button>
        </div>
      )}
    </div>
  )
}
