import { keepBothPlans, keepNewcomer, keepStoredPlan, type StoredTwin } from '../../state/planFiles'
import { goToWork } from '../stages/goToWork'
import { t } from '../text/t'
import { ask } from '../uiStore'
import { reporting } from './reporting'

/** A plan's name holds so much. */
const LONGEST_NAME = 200

const dateText = (atMs: number): string =>
  new Date(atMs).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })

const named = (name: string, atMs: number): string => {
  const date = ` (${dateText(atMs)})`
  return `${name.slice(0, LONGEST_NAME - date.length)}${date}`
}

/** A plan that is here already came in from a file and differs. Neither is lost, whatever is answered or not. */
export function askWhichToKeep(name: string, twin: StoredTwin, fileAtMs: number): void {
  const finish = (work: () => Promise<void>) => () => {
    void reporting(work).then(goToWork)
  }
  const names = { newcomer: named(name, fileAtMs), stored: named(name, twin.savedAtMs) }
  ask({
    problem: {
      code: 'plan-here-already',
      values: { here: dateText(twin.savedAtMs), file: dateText(fileAtMs) },
    },
    yes: t('twin-both'),
    no: t('twin-leave'),
    onYes: finish(() => keepBothPlans(twin, names)),
    more: [
      { label: t('twin-file'), onChoose: finish(() => keepNewcomer(twin)) },
      { label: t('twin-here'), onChoose: finish(() => keepStoredPlan(twin)) },
    ],
  })
}
