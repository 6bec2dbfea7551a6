import { useStore } from 'zustand'
import { forgetLost, sessionStore } from '../state/sessionStore'
import { t } from './text/t'
import { useDescribeProblem } from './text/useDescribeProblem'

/** What could not be kept of a job that was opened, by name, until the maker has read it. */
export function LostParts() {
  const lost = useStore(sessionStore, (session) => session.lost)
  const describe = useDescribeProblem()
  if (lost.length === 0) return null
  const sentences = [...new Set(lost.map(describe))]
  return (
    <section className="lost" role="alert" aria-label={t('lost-title')}>
      <h2>{t('lost-title')}</h2>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p className="note">{t('lost-kept')}</p>
      <button type="button" className="button" onClick={forgetLost}>
        {t('lost-read')}
      </button>
    </section>
  )
}
