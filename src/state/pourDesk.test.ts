import { beforeEach, describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatSlab } from '../../tests/support/flatPlan'
import { answerPour, computePlan, type PourResult, type PourTask } from '../core/plan'
import { JobProblem } from '../workers'
import { newPourDesk, pourStore } from './pourDesk'

const taskAt = (roomC: number): PourTask => {
  const option = flatOption(2000, 800, { xMm: -100, yMm: -100 })
  const room = { kind: 'steady', roomC } as const
  const plan = flatPlan(flatSlab({ outline: flatBox(-200, -150, 2000, 640) }), {
    ...option,
    resin: { ...option.resin, room },
  })
  const part = computePlan(plan).options.get('option')?.pourTask
  if (part?.state !== 'ready') throw new Error('no task')
  return part.value
}

/** A worker whose answers come when the test says so. */
function deskWithFake() {
  const asked: { readonly task: PourTask; readonly give: (result: PourResult | Error) => void }[] = []
  const answer = (task: PourTask): Promise<PourResult> =>
    new Promise((resolve, reject) => {
      asked.push({ task, give: (result) => (result instanceof Error ? reject(result) : resolve(result)) })
    })
  return { asked, desk: newPourDesk(() => ({ answer })) }
}

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

beforeEach(() => pourStore.setState({ answered: 0, isBusy: false, problem: null, lastOf: new Map() }))

describe('the desk of the pour worker', () => {
  it('keeps the answer of a task, and tells that one has come', async () => {
    const { asked, desk } = deskWithFake()
    const task = taskAt(21)
    desk.ask('option', task)
    expect(desk.answerOf(task)).toBeNull()
    expect(pourStore.getState().isBusy).toBe(true)
    const answer = answerPour(task)
    asked[0]?.give(answer)
    await turn()
    expect(desk.answerOf(task)).toBe(answer)
    expect(pourStore.getState()).toMatchObject({ answered: 1, isBusy: false, problem: null })
    expect(pourStore.getState().lastOf.get('option')).toBe(answer)
  })

  it('asks for the newest only of all that came while the worker was busy', async () => {
    const { asked, desk } = deskWithFake()
    const tasks = [20, 21, 22, 23].map(taskAt)
    for (const task of tasks) desk.ask('option', task)
    asked[0]?.give(answerPour(tasks[0] ?? taskAt(20)))
    await turn()
    expect(asked.map(({ task }) => task)).toEqual([tasks[0], tasks[3]])
  })

  it('answers a task that says the same at once, without the worker', async () => {
    const { asked, desk } = deskWithFake()
    const task = taskAt(21)
    desk.ask('option', task)
    asked[0]?.give(answerPour(task))
    await turn()
    const same = structuredClone(task)
    desk.ask('option', same)
    expect(desk.answerOf(same)).toBe(desk.answerOf(task))
    expect(asked).toHaveLength(1)
  })

  it('says why a task was not answered, and goes on with the next', async () => {
    const { asked, desk } = deskWithFake()
    desk.ask('option', taskAt(21))
    asked[0]?.give(new JobProblem({ code: 'pour-worker-crashed', values: {} }))
    await turn()
    expect(pourStore.getState()).toMatchObject({ isBusy: false, problem: { code: 'pour-worker-crashed' } })
    const next = taskAt(22)
    desk.ask('option', next)
    expect(pourStore.getState().problem).toBeNull()
    asked[1]?.give(answerPour(next))
    await turn()
    expect(desk.answerOf(next)).not.toBeNull()
  })
})
