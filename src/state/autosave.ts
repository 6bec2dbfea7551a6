import type { Plan } from '../core/plan'
import { asCopy } from './asCopy'
import { benchRecord, noteOnBench } from './bench'
import type { HistoryEntry } from './history'
import { photoHashesIn } from './planStorage'
import { planStore, type SaveStatus } from './planStore'
import { rememberPlan } from './lastPlan'
import { sameData } from './sameData'
import { setNotice } from './sessionStore'
import { planStorage } from './storageDesk'
import { TAB_ID, type TabMessage, listenToTabs, tellTabs } from './tabLink'
import { forgetUnsaved, noteUnsaved } from './unsavedNotes'

/** A change lies in the browser this long after it was made, and the writing takes a little. */
export const AUTOSAVE_DELAY_MS = 600

/** Well below the time after which an unrenewed lease ends. */
const LEASE_RENEWAL_MS = 3_600_000

let timer: ReturnType<typeof setTimeout> | null = null
let saving: Promise<void> | null = null
let leased: readonly string[] = []

const setSave = (save: SaveStatus): void => planStore.setState({ save })

const isUnsaved = (): boolean => planStore.getState().plan !== benchRecord().savedPlan

const isInConflict = (): boolean => planStore.getState().save.kind === 'conflict'

/** Photos of the plan on the bench and of every step that can still be undone or redone. */
function photosOnBench(): readonly string[] {
  const { plan, past, future } = planStore.getState()
  const slabs = new Set(
    [plan, ...[...past, ...future].map((step) => step.plan)].flatMap((each) => each.slabs),
  )
  return photoHashesIn([...slabs].map(({ capture }) => (capture.kind === 'photo' ? capture.photos : [])))
}

/** Comes before the save: a photo that the saved plan no longer shows may still come back by undo. */
async function renewLease(isDue: boolean): Promise<void> {
  const hashes = photosOnBench()
  if (!isDue && sameData(hashes, leased)) return
  try {
    await (await planStorage()).leasePhotos(TAB_ID, hashes)
    leased = hashes
  } catch {
    // A full disk: the save that follows meets it too, and tells the maker.
  }
}

async function saveNow(): Promise<void> {
  const { plan } = planStore.getState()
  setSave({ kind: 'saving' })
  await renewLease(false)
  const outcome = await (await planStorage()).savePlan(plan, benchRecord().revision)
  // While this plan was being written another one may have been put on the bench.
  if (planStore.getState().plan.id !== plan.id) return
  if (outcome.kind === 'failed') return setSave(outcome)
  if (outcome.kind === 'conflict') return setSave(outcome)
  const { revision, savedAtMs } = outcome
  noteOnBench({ revision, savedAtMs, savedPlan: plan })
  forgetUnsaved()
  setSave(isUnsaved() ? { kind: 'unsaved' } : { kind: 'saved', atMs: savedAtMs })
  tellTabs({ kind: 'saved', planId: plan.id, tabId: TAB_ID, revision, savedAtMs })
  if (isUnsaved()) schedule()
}

function schedule(): void {
  timer ??= setTimeout(() => void flush(), AUTOSAVE_DELAY_MS)
}

/** Saves what is unsaved, now. Resolves when it is done; the save status tells how it went. */
export async function flush(): Promise<void> {
  if (timer !== null) clearTimeout(timer)
  timer = null
  while (saving !== null) await saving
  if (!isUnsaved() || isInConflict()) return
  saving = saveNow().finally(() => {
    saving = null
  })
  await saving
}

const withId = (plan: Plan, id: string): Plan => ({ ...plan, id })

const stepsWithId = (steps: readonly HistoryEntry[], id: string): readonly HistoryEntry[] =>
  steps.map((step) => ({ ...step, plan: withId(step.plan, id) }))

/** After a conflict: the plan on the bench becomes one of its own, steps to undo included, and is saved. */
export async function keepMineAsCopy(): Promise<void> {
  const { plan, past, future } = planStore.getState()
  const copy = asCopy(plan)
  noteOnBench({ revision: null, savedPlan: null, filedPlan: null })
  planStore.setState({
    plan: copy,
    past: stepsWithId(past, copy.id),
    future: stepsWithId(future, copy.id),
    save: { kind: 'unsaved' },
  })
  rememberPlan(copy.id)
  await flush()
}

function planChanged(): void {
  if (isInConflict()) return
  if (isUnsaved()) {
    setSave({ kind: 'unsaved' })
    schedule()
  } else setSave({ kind: 'saved', atMs: benchRecord().savedAtMs })
}

function hear(message: TabMessage): void {
  const { plan } = planStore.getState()
  if (message.planId !== plan.id || message.tabId === TAB_ID) return
  if (message.kind === 'opened') {
    tellTabs({ kind: 'also-open', planId: plan.id, tabId: TAB_ID, to: message.tabId })
  } else if (message.kind === 'also-open') {
    if (message.to === TAB_ID) setNotice({ code: 'plan-open-elsewhere', values: {} })
  } else if (message.revision > (benchRecord().revision ?? 0)) {
    setSave({ kind: 'conflict', theirSavedAtMs: message.savedAtMs })
  }
}

/** The page goes, perhaps for good: what is unsaved is noted at once, and saved if there is time for it. */
function pageHidden(): void {
  if (!isUnsaved()) return
  noteUnsaved(planStore.getState().plan, benchRecord().revision)
  void flush()
}

function listenToPage(): () => void {
  if (typeof window === 'undefined') return () => undefined
  const left = (event: PageTransitionEvent): void => {
    pageHidden()
    // A page that may come back (from the browser's history) keeps its photos.
    if (!event.persisted) void planStorage().then((storage) => storage.endLease(TAB_ID))
  }
  const hidden = (): void => {
    if (document.visibilityState === 'hidden') pageHidden()
  }
  window.addEventListener('pagehide', left)
  document.addEventListener('visibilitychange', hidden)
  return () => {
    window.removeEventListener('pagehide', left)
    document.removeEventListener('visibilitychange', hidden)
  }
}

/**
 * From now on every change of the plan is saved by itself, and the other tabs are listened to.
 * @returns a function that stops it, without a last save
 */
export function startAutosave(): () => void {
  const stops = [
    planStore.subscribe((state, before) => {
      if (state.plan !== before.plan) planChanged()
    }),
    listenToTabs(hear),
    listenToPage(),
  ]
  const renewal = setInterval(() => void renewLease(true), LEASE_RENEWAL_MS)
  if (isUnsaved()) schedule()
  return () => {
    for (const stop of stops) stop()
    clearInterval(renewal)
    if (timer !== null) clearTimeout(timer)
    timer = null
  }
}
