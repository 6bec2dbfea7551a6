import { answerBuild } from '../build/answerBuild'
import type { BuildResult } from '../build/buildResult'
import type { BuildTask } from '../build/buildTask'
import { answerPour, type PourResult } from './answerPour'
import type { PourTask } from './pourTask'

/** What is known of the parts that are too slow for a drag; a worker gives them. */
export interface SlowAnswers {
  /** Null: not known yet. */
  readonly pour: (task: PourTask) => PourResult | null
  readonly build: (task: BuildTask) => BuildResult | null
}

export const NO_ANSWERS: SlowAnswers = { pour: () => null, build: () => null }

/** Works everything out on the spot: for tests, and for whoever can wait. */
export const ANSWERS_ON_THE_SPOT: SlowAnswers = { pour: answerPour, build: answerBuild }
