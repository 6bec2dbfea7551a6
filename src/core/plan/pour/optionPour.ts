import type { Issue } from '../issue'
import { issueOf } from '../issue'
import { blockedBy, type Found, ready } from '../part'
import type { OptionResult } from '../planResult'
import type { PourResult } from './answerPour'
import { pourIssues } from './pourIssues'
import { type PourTask, pourTask, type PourTaskInput } from './pourTask'

/** What is asked of the pour; blocked where there is nothing to pour. */
export function optionPour(input: PourTaskInput & { readonly optionId: string }): Found<PourTask> {
  const task = pourTask(input)
  if (task.gaps.length > 0) return ready(task)
  const nothing = issueOf('pour-nothing-to-fill', 'note', ['options', input.optionId, 'pour'])
  return { ...blockedBy([nothing]), part: { state: 'blocked', because: [nothing.id] } }
}

interface Figures {
  readonly result: OptionResult
  readonly issues: readonly Issue[]
}

/** The figures of an option with the pour's answer, once it is known. Rules: POUR-7. */
export function withPour({
  figures,
  answer,
}: {
  readonly figures: Figures
  readonly answer: PourResult | null
}): Figures {
  if (answer === null) return figures
  const { result, issues } = figures
  return {
    result: { ...result, pour: { state: 'ready', value: answer } },
    issues: [...issues, ...pourIssues(result.optionId, answer.notices)],
  }
}
