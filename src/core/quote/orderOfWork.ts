import { InvariantError } from '../units'
import { STEP_NEEDS, type WorkStep, type WorkStepId } from './workSteps'

/** Hours from midnight before the first pour; null: the plan of the pour does not say. */
export interface PourTimes {
  readonly lastPourHour: number | null
  readonly demouldHour: number | null
  readonly flattenHour: number | null
}

export interface WorkTask {
  /** In the maker's order; steps that are left out are not in it. */
  readonly steps: readonly WorkStep[]
  readonly hoursPerDay: number
  /** Whether anybody works on a day; days count from that of the first pour. */
  readonly isShopDay: (day: number) => boolean
  readonly pour: PourTimes
}

export interface TimedStep extends WorkStep {
  readonly number: number
  /** Days from that of the first pour; below zero: before it. */
  readonly firstDay: number
  readonly lastDay: number
  /** Steps that it needs and that come only after it. */
  readonly needsLater: readonly WorkStepId[]
}

export interface WorkOrder {
  readonly steps: readonly TimedStep[]
  readonly hours: number
  /** Days on which something is done. */
  readonly shopDays: number
  readonly firstDay: number
  readonly lastDay: number
}

/** A look-out so that a week without shop days is a mistake and not a hang. */
const LONGEST_REST = 60

interface Span {
  readonly firstDay: number
  readonly lastDay: number
}

/** Hours put into shop days one after the other, forwards (1) or backwards (−1) in time. */
class Days {
  #usedHours = 0
  readonly worked = new Set<number>()

  constructor(
    private day: number,
    private readonly direction: 1 | -1,
    private readonly task: WorkTask,
  ) {}

  notBefore(day: number): void {
    if (day <= this.day) return
    this.day = day
    this.#usedHours = 0
  }

  wait(days: number): void {
    if (days <= 0) return
    this.day += this.direction * days
    this.#usedHours = 0
  }

  take(hours: number): Span {
    if (hours <= 0) return { firstDay: this.day, lastDay: this.day }
    let left = hours
    const days: number[] = []
    while (left > 1e-9) {
      this.#toShopDay()
      const taken = Math.min(left, this.task.hoursPerDay - this.#usedHours)
      this.#usedHours += taken
      left -= taken
      days.push(this.day)
      this.worked.add(this.day)
    }
    return { firstDay: Math.min(...days), lastDay: Math.max(...days) }
  }

  #toShopDay(): void {
    if (this.#usedHours < this.task.hoursPerDay - 1e-9 && this.task.isShopDay(this.day)) return
    if (this.#usedHours >= this.task.hoursPerDay - 1e-9) this.day += this.direction
    this.#usedHours = 0
    for (let looked = 0; !this.task.isShopDay(this.day); looked += 1) {
      if (looked > LONGEST_REST) throw new InvariantError('somebody works some day', { day: this.day })
      this.day += this.direction
    }
  }
}

/**
 * The steps with their days, laid round the first pour: what comes before it ends the day before, what comes after waits
 * for resin and finish.
 * @param task hours and waits ≥ 0; a list without the pour is laid from day 0 on
 * @returns days counted from the first pour; steps that stand before what they need are named, not moved
 * @throws InvariantError when no day is a shop day, or a day has no hours
 * Rules: QUO-8, QUO-9.
 */
export function orderOfWork(task: WorkTask): WorkOrder {
  if (!(task.hoursPerDay > 0)) throw new InvariantError('a day has hours', { hoursPerDay: task.hoursPerDay })
  const { steps } = task
  const pourAt = steps.findIndex(({ id }) => id === 'pour')
  const before = pourAt < 0 ? [] : steps.slice(0, pourAt)
  const backwards = new Days(-1, -1, task)
  const early = before.toReversed().map((step) => {
    backwards.wait(step.waitDays)
    return backwards.take(step.hours)
  })
  const forwards = new Days(0, 1, task)
  const late = steps.slice(Math.max(0, pourAt)).map((step) => spanAfter(step, forwards, task))
  const spans = [...early.toReversed(), ...late]
  const timed = steps.map((step, at) => ({
    ...step,
    number: at + 1,
    firstDay: spans[at]?.firstDay ?? 0,
    lastDay: spans[at]?.lastDay ?? 0,
    needsLater: STEP_NEEDS[step.id].filter((need) => steps.slice(at + 1).some(({ id }) => id === need)),
  }))
  return {
    steps: timed,
    hours: steps.reduce((sum, { hours }) => sum + hours, 0),
    shopDays: new Set([...backwards.worked, ...forwards.worked]).size,
    firstDay: Math.min(0, ...spans.map(({ firstDay }) => firstDay)),
    lastDay: Math.max(0, ...spans.map(({ lastDay }) => lastDay)),
  }
}

function spanAfter(step: WorkStep, days: Days, { pour }: WorkTask): Span {
  const dayOf = (hour: number | null): number => (hour === null ? 0 : Math.floor(hour / 24))
  if (step.id === 'demould') days.notBefore(dayOf(pour.demouldHour))
  if (step.id === 'flatten-cast') days.notBefore(dayOf(pour.flattenHour))
  const span = days.take(step.hours)
  if (step.id !== 'pour') {
    days.wait(step.waitDays)
    return step.waitDays > 0 && step.hours === 0 ? { ...span, lastDay: span.firstDay + step.waitDays } : span
  }
  const lastDay = Math.max(span.lastDay, dayOf(pour.lastPourHour))
  days.notBefore(lastDay)
  days.wait(step.waitDays)
  return { firstDay: span.firstDay, lastDay }
}
