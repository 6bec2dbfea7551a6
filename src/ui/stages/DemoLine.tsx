import { performAction } from '../actions/perform'
import { t } from '../text/t'
import { useShownPlan } from '../useActive'

/** Says that a demo job is made up, and offers the way to one's own. */
export function DemoLine() {
  const plan = useShownPlan()
  if (!plan.invented) return null
  return (
    <section className="demo-line" aria-label={t('demo-line-short')}>
      <p>
        <span className="for-wide">{t('demo-line')}</span>
        <span className="for-phone">{t('demo-line-short')}</span>
      </p>
      <button
        type="button"
        className="button button-main button-small"
        onClick={() => performAction('start-own')}
      >
        <span className="for-wide">{t('action-start-own')}</span>
        <span className="for-phone">{t('start-own-short')}</span>
      </button>
    </section>
  )
}
