import { useStore } from 'zustand'
import { keepMineAsCopy, loadTheirs } from '../../state/planFiles'
import { planStore } from '../../state/planStore'
import { reporting } from '../files/reporting'
import { t } from '../text/t'

/** Two windows changed the same job: the maker says whose goes on, and neither is overwritten. */
export function ConflictChoice() {
  const isConflict = useStore(planStore, ({ save }) => save.kind === 'conflict')
  if (!isConflict) return null
  return (
    <div className="button-row">
      <button type="button" className="button button-small" onClick={() => void reporting(keepMineAsCopy)}>
        {t('saved-keep-mine')}
      </button>
      <button type="button" className="button button-small" onClick={() => void reporting(loadTheirs)}>
        {t('saved-take-theirs')}
      </button>
    </div>
  )
}
