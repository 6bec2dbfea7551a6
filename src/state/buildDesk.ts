import type { BuildResult, BuildTask } from '../core/plan'
import { BuildClient } from '../workers'
import { AnswerDesk, newAnswerStore } from './answerDesk'

export const buildStore = newAnswerStore<BuildResult>()

const desk = new AnswerDesk<BuildTask, BuildResult>(
  () => new BuildClient(),
  buildStore,
  'build-worker-failed',
)

/** Sees to it that form, weight, work and price of an option are worked out. */
export const askBuild = (optionId: string, task: BuildTask): void => desk.ask(optionId, task)

/** What the worker has answered so far. */
export const buildAnswerOf = (task: BuildTask): BuildResult | null => desk.answerOf(task)
