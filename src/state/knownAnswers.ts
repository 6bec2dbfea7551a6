import type { SlowAnswers } from '../core/plan'
import { buildAnswerOf, buildStore } from './buildDesk'
import { pourAnswerOf, pourStore } from './pourDesk'

/** What the workers have answered so far, for computePlan. */
export const KNOWN_ANSWERS: SlowAnswers = { pour: pourAnswerOf, build: buildAnswerOf, isDraft: false }

/** Goes up whenever a worker has answered. */
export const answersSoFar = (): number => pourStore.getState().answered + buildStore.getState().answered
