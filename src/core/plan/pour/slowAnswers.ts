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
  /** The plan is the draft of a running gesture: what cannot keep up with it is left pending. */
  readonly isDraft: boolean
}

export const NO_ANSWERS: SlowAnswers = { pour: () => null, build: () => null, isDraft: false }

/** Works everything out on the spot: for tests, and for whoever can wait. */
export const ANSWERS_ON_THE_SPOT: SlowAnswers = { pour: answerPour, build: answerBuild, isDraft: false }
