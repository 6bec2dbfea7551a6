import { createStore } from 'zustand/vanilla'
import type { PourResult, PourTask, SlowAnswers } from '../core/plan'
import type { InputProblem } from '../core/units'
import { JobProblem, PourClient } from '../workers'

interface PourState {
  /** Goes up with every answer that comes in: results of the plan are then worked out anew. */
  readonly answered: number
  readonly isBusy: boolean
  /** Why the last task was not answered. */
  readonly problem: InputProblem | null
  /** The last answer of each option, to be shown as an old one while the next is on its way. */
  readonly lastOf: ReadonlyMap<string, PourResult>
}

export const pourStore = createStore<PourState>(() => ({
  answered: 0,
  isBusy: false,
  problem: null,
  lastOf: new Map(),
}))

export interface PourAsker {
  readonly answer: (task: PourTask) => Promise<PourResult>
}

interface Wish {
  readonly optionId: string
  readonly task: PourTask
  /** Stands for the input: the text itself, so that no two inputs share it. */
  readonly key: string
}

const ANSWERS_KEPT = 24

/**
 * Asks one worker for pours, one at a time; of those that wait only the newest is asked for.
 * A cache that may vanish at any time: nothing of it is saved.
 */
export class PourDesk {
  readonly #makeAsker: () => PourAsker
  #asker: PourAsker | null = null
  #byTask = new WeakMap<PourTask, PourResult>()
  #byKey: readonly { readonly key: string; readonly answer: PourResult }[] = []
  #next: Wish | null = null
  #isBusy = false

  constructor(makeAsker: () => PourAsker) {
    this.#makeAsker = makeAsker
  }

  /** What is known of a task. */
  answerOf(task: PourTask): PourResult | null {
    return this.#byTask.get(task) ?? null
  }

  /** Sees to it that the task is answered, unless a newer one comes before its turn. */
  ask(optionId: string, task: PourTask): void {
    if (this.#byTask.has(task)) return
    const wish = { optionId, task, key: JSON.stringify(task) }
    const known = this.#byKey.find(({ key }) => key === wish.key)
    if (known !== undefined) {
      this.#keep(wish, known.answer)
      return
    }
    this.#next = wish
    if (!this.#isBusy) void this.#work()
  }

  async #work(): Promise<void> {
    this.#isBusy = true
    pourStore.setState({ isBusy: true, problem: null })
    while (this.#next !== null) {
      const wish: Wish = this.#next
      this.#next = null
      await this.#answer(wish)
    }
    this.#isBusy = false
    pourStore.setState({ isBusy: false })
  }

  async #answer(wish: Wish): Promise<void> {
    try {
      this.#asker ??= this.#makeAsker()
      this.#keep(wish, await this.#asker.answer(wish.task))
    } catch (error) {
      const problem =
        error instanceof JobProblem
          ? error.problem
          : { code: 'pour-worker-failed', values: { reason: String(error) } }
      pourStore.setState({ problem })
    }
  }

  #keep({ optionId, task, key }: Wish, answer: PourResult): void {
    this.#byTask.set(task, answer)
    this.#byKey = [{ key, answer }, ...this.#byKey.filter((kept) => kept.key !== key)].slice(0, ANSWERS_KEPT)
    pourStore.setState(({ answered, lastOf }) => ({
      answered: answered + 1,
      problem: null,
      lastOf: new Map(lastOf).set(optionId, answer),
    }))
  }
}

const desk = new PourDesk(() => new PourClient())

/** Sees to it that the pour of an option is worked out. */
export const askPour = (optionId: string, task: PourTask): void => desk.ask(optionId, task)

/** What the worker has answered so far, for computePlan. */
export const KNOWN_ANSWERS: SlowAnswers = {
  pour: (task) => desk.answerOf(task),
  build: () => null,
  isDraft: false,
}
