import { createStore, type StoreApi } from 'zustand/vanilla'
import type { InputProblem } from '../core/units'
import { JobProblem } from '../workers'

export interface AnswerState<Answer> {
  /** Goes up with every answer that comes in: results of the plan are then worked out anew. */
  readonly answered: number
  readonly isBusy: boolean
  /** Why the last task was not answered. */
  readonly problem: InputProblem | null
  /** The last answer of each option, to be shown as an old one while the next is on its way. */
  readonly lastOf: ReadonlyMap<string, Answer>
}

export const newAnswerStore = <Answer>(): StoreApi<AnswerState<Answer>> =>
  createStore<AnswerState<Answer>>(() => ({ answered: 0, isBusy: false, problem: null, lastOf: new Map() }))

export interface Asker<Task, Answer> {
  readonly answer: (task: Task) => Promise<Answer>
}

interface Wish<Task> {
  readonly optionId: string
  readonly task: Task
  /** Stands for the input: the text itself, so that no two inputs share it. */
  readonly key: string
}

const ANSWERS_KEPT = 24

/**
 * Asks one worker, one task at a time; of those of an option that wait only the newest is asked for.
 * A cache that may vanish at any time: nothing of it is saved.
 */
export class AnswerDesk<Task extends object, Answer> {
  readonly #makeAsker: () => Asker<Task, Answer>
  readonly #store: StoreApi<AnswerState<Answer>>
  readonly #failureCode: string
  #asker: Asker<Task, Answer> | null = null
  #byTask = new WeakMap<Task, Answer>()
  #byKey: readonly { readonly key: string; readonly answer: Answer }[] = []
  #waiting: readonly Wish<Task>[] = []
  #isBusy = false

  constructor(
    makeAsker: () => Asker<Task, Answer>,
    store: StoreApi<AnswerState<Answer>>,
    failureCode: string,
  ) {
    this.#makeAsker = makeAsker
    this.#store = store
    this.#failureCode = failureCode
  }

  /** What is known of a task. */
  answerOf(task: Task): Answer | null {
    return this.#byTask.get(task) ?? null
  }

  /** Sees to it that the task is answered, unless a newer one of its option comes before its turn. */
  ask(optionId: string, task: Task): void {
    if (this.#byTask.has(task)) return
    const wish = { optionId, task, key: JSON.stringify(task) }
    const known = this.#byKey.find(({ key }) => key === wish.key)
    if (known !== undefined) {
      this.#keep(wish, known.answer)
      return
    }
    this.#waiting = [...this.#waiting.filter((other) => other.optionId !== optionId), wish]
    if (!this.#isBusy) void this.#work()
  }

  async #work(): Promise<void> {
    this.#isBusy = true
    this.#store.setState({ isBusy: true, problem: null })
    for (let [wish] = this.#waiting; wish !== undefined; [wish] = this.#waiting) {
      this.#waiting = this.#waiting.slice(1)
      await this.#answer(wish)
    }
    this.#isBusy = false
    this.#store.setState({ isBusy: false })
  }

  async #answer(wish: Wish<Task>): Promise<void> {
    try {
      this.#asker ??= this.#makeAsker()
      this.#keep(wish, await this.#asker.answer(wish.task))
    } catch (error) {
      const problem =
        error instanceof JobProblem
          ? error.problem
          : { code: this.#failureCode, values: { reason: String(error) } }
      this.#store.setState({ problem })
    }
  }

  #keep({ optionId, task, key }: Wish<Task>, answer: Answer): void {
    this.#byTask.set(task, answer)
    this.#byKey = [{ key, answer }, ...this.#byKey.filter((kept) => kept.key !== key)].slice(0, ANSWERS_KEPT)
    this.#store.setState(({ answered, lastOf }) => ({
      answered: answered + 1,
      problem: null,
      lastOf: new Map(lastOf).set(optionId, answer),
    }))
  }
}
