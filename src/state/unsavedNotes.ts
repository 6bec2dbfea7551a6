import type { Plan } from '../core/plan'
import { asCopy } from './asCopy'
import type { PlanStorage, SaveOutcome } from './planStorage'
import { setNotice } from './sessionStore'
import { TAB_ID } from './tabLink'

/**
 * A page that is being left gets no answer from the database any more, so it can read no revision and save nothing
 * safely. It leaves a note instead, which is written at once; the next page saves it, or puts it beside what another
 * tab has saved meanwhile.
 */
const PREFIX = 'waneline-unsaved-'

/** A plan too large for a note is left to the last autosave: notes share a few megabytes. */
const NOTE_LIMIT = 2_000_000

interface UnsavedNote {
  readonly plan: unknown
  readonly revision: number | null
}

/** A browser that keeps nothing for us throws, or has no storage at all. */
function withNotes<T>(work: (notes: Storage) => T, otherwise: T): T {
  try {
    const notes = globalThis.localStorage
    return notes === undefined ? otherwise : work(notes)
  } catch {
    return otherwise
  }
}

export function noteUnsaved(plan: Plan, revision: number | null): void {
  const text = JSON.stringify({ plan, revision } satisfies UnsavedNote)
  if (text.length > NOTE_LIMIT) return
  withNotes((notes) => notes.setItem(PREFIX + TAB_ID, text), undefined)
}

/** Once this tab's plan is stored. */
export const forgetUnsaved = (): void => withNotes((notes) => notes.removeItem(PREFIX + TAB_ID), undefined)

const notedKeys = (): readonly string[] =>
  withNotes(
    (notes) =>
      Array.from({ length: notes.length }, (_, n) => notes.key(n) ?? '').filter((key) =>
        key.startsWith(PREFIX),
      ),
    [],
  )

function noteAt(key: string): UnsavedNote | null {
  const text = withNotes((notes) => notes.getItem(key), null)
  try {
    const note: unknown = JSON.parse(text ?? 'null')
    if (typeof note !== 'object' || note === null || !('plan' in note && 'revision' in note)) return null
    return { plan: note.plan, revision: typeof note.revision === 'number' ? note.revision : null }
  } catch {
    return null
  }
}

async function save(storage: PlanStorage, { plan, revision }: UnsavedNote): Promise<SaveOutcome['kind']> {
  const { parsePlan } = await import('./planReader')
  const parsed = parsePlan(plan)
  if (!parsed.ok) {
    const original = new Blob([JSON.stringify(plan)], { type: 'application/json' })
    return (await storage.keepOriginal('unsaved', original)) === null ? 'saved' : 'failed'
  }
  const outcome = await storage.savePlan(parsed.value.plan, revision)
  if (outcome.kind !== 'conflict') return outcome.kind
  setNotice({ code: 'unsaved-kept-as-copy', values: { name: parsed.value.plan.name } })
  return (await storage.savePlan(asCopy(parsed.value.plan), null)).kind
}

/** Saves what pages that were left had not saved. Notes that cannot be saved now stay for the next time. */
export async function saveNotes(storage: PlanStorage): Promise<void> {
  for (const key of notedKeys()) {
    if (key === PREFIX + TAB_ID) continue
    const note = noteAt(key)
    if (note !== null && (await save(storage, note)) === 'failed') continue
    withNotes((notes) => notes.removeItem(key), undefined)
  }
}
