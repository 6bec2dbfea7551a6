import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { orderOfWork, type WorkTask } from './orderOfWork'
import { STEP_NEEDS, USUAL_STEPS, WORK_STEPS, type WorkStep, type WorkStepId } from './workSteps'

const SEED = 20_261_130
console.info(`order of work properties: seed ${SEED}`)

const step = (id: WorkStepId, hours: number, waitDays = 0): WorkStep => ({ id, hours, waitDays })
const taskOf = (steps: readonly WorkStep[], more: Partial<WorkTask> = {}): WorkTask => ({
  steps,
  hoursPerDay: 8,
  isShopDay: () => true,
  pour: { lastPourHour: null, demouldHour: null, flattenHour: null },
  ...more,
})
const daysOf = (task: WorkTask) =>
  orderOfWork(task).steps.map(({ firstDay, lastDay }) => [firstDay, lastDay] as const)

describe('the order of work', () => {
  it('QUO-8 has every step once in its usual order, each after what it needs', () => {
    expect(USUAL_STEPS.map(({ id }) => id).toSorted((a, b) => a.localeCompare(b))).toEqual(
      [...WORK_STEPS].toSorted((a, b) => a.localeCompare(b)),
    )
    expect(orderOfWork(taskOf(USUAL_STEPS)).steps.flatMap(({ needsLater }) => needsLater)).toEqual([])
  })

  it('QUO-8 names what a step needs and gets only later, and leaves it where it is', () => {
    const { steps } = orderOfWork(
      taskOf([step('final-cuts', 1), step('measure-again', 1), step('pour', 1), step('seal', 1)]),
    )
    expect(steps.map(({ id, needsLater }) => [id, needsLater])).toEqual([
      ['final-cuts', ['measure-again']],
      ['measure-again', []],
      ['pour', ['seal']],
      ['seal', []],
    ])
  })

  it('QUO-9 lays the work round the pour (by hand)', () => {
    // 12 h before the pour: 8 on day −1, 4 on day −2; a wait of 2 days before that.
    const task = taskOf(
      [
        step('rough-cut', 4, 2),
        step('flatten-wood', 12),
        step('pour', 3),
        step('demould', 2),
        step('sand', 10),
      ],
      {
        pour: { lastPourHour: 40, demouldHour: 100, flattenHour: 150 },
      },
    )
    expect(daysOf(task)).toEqual([
      [-4, -4],
      [-2, -1],
      [0, 1],
      [4, 4],
      [4, 5],
    ])
    expect(orderOfWork(task)).toMatchObject({ hours: 31, shopDays: 6, firstDay: -4, lastDay: 5 })
  })

  it('QUO-9 rests at the week’s end, and lets resin and finish have their days', () => {
    // Day 0 is a Friday.
    const isShopDay = (day: number): boolean => ![1, 2].includes(((day % 7) + 7) % 7)
    const task = taskOf(
      [
        step('seal', 4),
        step('pour', 8),
        step('top-up', 1),
        step('finish', 4),
        step('cure-finish', 0, 7),
        step('deliver', 3),
      ],
      { isShopDay },
    )
    expect(daysOf(task)).toEqual([
      [-1, -1],
      [0, 0],
      [3, 3],
      [3, 3],
      [3, 10],
      [10, 10],
    ])
    expect(() => orderOfWork(taskOf([step('pour', 1)], { isShopDay: () => false }))).toThrow('works')
    expect(() => orderOfWork(taskOf([], { hoursPerDay: 0 }))).toThrow('hours')
  })

  it('QUO-9 holds for any order: before the pour all ends by day −1, works on shop days, never goes back', () => {
    const order = fc.shuffledSubarray([...USUAL_STEPS])
    const rest = fc.integer({ min: 0, max: 6 })
    fc.assert(
      fc.property(order, rest, fc.integer({ min: 0, max: 300 }), (steps, off, demouldHour) => {
        const isShopDay = (day: number): boolean => ((day % 7) + 7) % 7 !== off
        const found = orderOfWork(
          taskOf(steps, { isShopDay, pour: { lastPourHour: 30, demouldHour, flattenHour: 200 } }),
        )
        const pourAt = found.steps.findIndex(({ id }) => id === 'pour')
        found.steps.forEach((timed, at) => {
          if (at < pourAt) expect(timed.lastDay).toBeLessThanOrEqual(-1)
          if (at > 0) expect(timed.firstDay).toBeGreaterThanOrEqual(found.steps[at - 1]?.firstDay ?? 0)
          if (timed.hours > 0 && timed.id !== 'pour')
            expect(isShopDay(timed.firstDay) && isShopDay(timed.lastDay)).toBe(true)
          if (timed.id === 'demould' && at > pourAt)
            expect(timed.firstDay).toBeGreaterThanOrEqual(Math.floor(demouldHour / 24))
        })
        expect(found.steps.map(({ id }) => id)).toEqual(steps.map(({ id }) => id))
      }),
      { seed: SEED },
    )
    for (const needs of Object.values(STEP_NEEDS))
      for (const need of needs) expect(WORK_STEPS).toContain(need)
  })
})
