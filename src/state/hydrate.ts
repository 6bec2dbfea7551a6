import { blankPlan } from '../core/plan'
import { startAutosave } from './autosave'
import { NOTHING_TO_STORE, putOnBench } from './bench'
import { rememberedPlan } from './lastPlan'
import { loadDemo } from './loadDemo'
import { newId } from './newId'
import { listPlans, openPlan } from './plans'
import { setNotice } from './sessionStore'
import { planStorage } from './storageDesk'
import { askToBeKept } from './storageRoom'
import { saveNotes } from './unsavedNotes'

/** The remembered plan, else the newest one. @returns whether one came on the bench */
async function openLast(): Promise<boolean> {
  const stored = (await listPlans()).map(({ id }) => id)
  const remembered = rememberedPlan()
  const first = stored.filter((id) => id === remembered)
  for (const id of [...first, ...stored.filter((other) => other !== remembered)]) {
    const opened = await openPlan(id)
    if (opened.ok) return true
    // It stays stored; the maker hears why it did not open.
    setNotice(opened.problem)
  }
  return false
}

/**
 * Once, when the page starts: puts the last plan of this browser on the bench, or the demo in a new one, and saves every
 * change from then on.
 */
export async function hydrate(): Promise<void> {
  startAutosave()
  askToBeKept()
  await saveNotes(await planStorage())
  if (!(await openLast())) {
    const demo = await loadDemo('library-table')
    if (!demo.ok) {
      putOnBench(blankPlan(newId(), newId()), NOTHING_TO_STORE)
      setNotice(demo.problem)
    }
  }
  await (await planStorage()).dropUnusedPhotos()
}
