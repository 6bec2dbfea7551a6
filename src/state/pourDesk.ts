import type { PourResult, PourTask } from '../core/plan'
import { PourClient } from '../workers'
import { AnswerDesk, type Asker, newAnswerStore } from './answerDesk'

export const pourStore = newAnswerStore<PourResult>()

/** A desk of its own: the one of the page, or one with a worker of a test's. */
export const newPourDesk = (makeAsker: () => Asker<PourTask, PourResult>): AnswerDesk<PourTask, PourResult> =>
  new AnswerDesk(makeAsker, pourStore, 'pour-worker-failed')

const desk = newPourDesk(() => new PourClient())

/** Sees to it that the pour of an option is worked out. */
export const askPour = (optionId: string, task: PourTask): void => desk.ask(optionId, task)

/** What the worker has answered so far. */
export const pourAnswerOf = (task: PourTask): PourResult | null => desk.answerOf(task)
