import { computePlan, describeProblem, planSchema } from '../../src/core/plan'
import type { InputProblem } from '../../src/core/units'
import type { BrokenFile } from './brokenFiles'
import type { BrowserTab } from './browserTab'

/** What a broken file came to, when all went as it must. */
export type BrokenOutcome = 'refused' | 'opened whole' | 'opened in part' | 'photo'

const MM = { system: 'mm' } as const

/** Its sentence of the catalogue. @throws Error when there is none, or one with a hole in it */
function sentenceFor(problem: InputProblem, whose: string): string {
  const sentence = describeProblem(problem, MM)
  if (/^This could not be accepted|undefined|\[object|NaN/.test(sentence)) {
    throw new Error(`${whose}: no sentence for ${JSON.stringify(problem)}: ${sentence}`)
  }
  return sentence
}

/**
 * Opens a broken file by the way that the program itself takes, and checks that the maker lost nothing by it.
 * @throws Error naming what was lost or left unsaid
 */
export async function openBroken(tab: BrowserTab, file: BrokenFile, seed: number): Promise<BrokenOutcome> {
  const whose = `seed ${seed}, ${file.kind}`
  const before = tab.planStore.getState().plan
  const opened = await tab.openFile(new File([new Uint8Array(file.bytes)], file.name))
  const { plan } = tab.planStore.getState()
  if (!opened.ok) {
    sentenceFor(opened.problem, whose)
    if (plan !== before) throw new Error(`${whose}: refused, but the bench has changed`)
    return 'refused'
  }
  if (opened.value.kind === 'photo') {
    if (plan !== before) throw new Error(`${whose}: a photo changed the bench`)
    return 'photo'
  }
  for (const lost of opened.value.lost) sentenceFor(lost, whose)
  if (!planSchema.safeParse(plan).success) throw new Error(`${whose}: the bench holds no legal plan`)
  computePlan(plan)
  await tab.flush()
  if (tab.planStore.getState().save.kind !== 'saved') throw new Error(`${whose}: opened, but not saved`)
  return opened.value.lost.length === 0 ? 'opened whole' : 'opened in part'
}

/** Opens the files of these seeds, one after the other, in a tab at work. @returns how many came to what, by kind */
export async function openAllBroken(
  tab: BrowserTab,
  seeds: readonly number[],
  make: (seed: number) => BrokenFile,
): Promise<Readonly<Record<string, number>>> {
  const own = tab.planStore.getState().plan
  const counts: Record<string, number> = {}
  for (const seed of seeds) {
    const file = make(seed)
    const outcome = await openBroken(tab, file, seed)
    const key = `${file.kind}: ${outcome}`
    counts[key] = (counts[key] ?? 0) + 1
  }
  const back = await tab.openPlan(own.id)
  if (!back.ok || JSON.stringify(back.value.plan) !== JSON.stringify(own)) {
    throw new Error('the job that was at work before is not what it was')
  }
  return counts
}
