import { useStore } from 'zustand'
import { planStore, type SaveStatus } from '../../state/planStore'
import { storageStore } from '../../state/storageDesk'
import { t } from '../text/t'
import { useDescribeProblem } from '../text/useDescribeProblem'

const clock = (atMs: number): string =>
  new Date(atMs).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })

function savedText(save: SaveStatus, describe: ReturnType<typeof useDescribeProblem>): string {
  switch (save.kind) {
    case 'saved':
      return t('saved-at', { time: clock(save.atMs) })
    case 'saving':
      return t('saved-saving')
    case 'unsaved':
      return t('saved-not-yet')
    case 'failed':
      return describe(save.problem)
    case 'conflict':
      return t('saved-conflict', { time: clock(save.theirSavedAtMs) })
  }
}

/** Whether the plan is safe in this browser. */
export function SavedLine() {
  const save = useStore(planStore, (state) => state.save)
  const isFleeting = useStore(storageStore, (storage) => storage.isFleeting)
  const describe = useDescribeProblem()
  if (isFleeting) {
    return (
      <p className="saved-line" data-failed="">
        {t('saved-fleeting')}
      </p>
    )
  }
  const isTrouble = save.kind === 'failed' || save.kind === 'conflict'
  return (
    <p className="saved-line" data-failed={isTrouble ? '' : undefined} role={isTrouble ? 'alert' : undefined}>
      {savedText(save, describe)}
    </p>
  )
}
