import { beforeEach, describe, expect, it, vi } from 'vitest'
import { blankPlan, type Plan } from '../core/plan'
import type { Command } from './command'
import { renamePlan, setPlanNote } from './commands'
import { HISTORY_LIMIT } from './history'
import { planStore, showPlan } from './planStore'
import { redo, run, undo } from './run'
import { sessionStore, setDraft } from './sessionStore'

// The state has nothing to do with React: it must work where there is none.
vi.mock('react', () => ({}))

const START = blankPlan('plan', 'option')
const nameNow = (): string => planStore.getState().plan.name
const labels = (): readonly string[] => planStore.getState().past.map(({ label }) => label)

beforeEach(() => showPlan(START, { kind: 'unsaved' }))

describe('run, undo, redo', () => {
  it('makes one step of one command, named after it', () => {
    run(renamePlan, { name: 'Desk' })
    run(setPlanNote, { note: 'oil' })
    expect(labels()).toEqual(['renamePlan', 'setPlanNote'])
    expect(planStore.getState().past[0]?.plan).toBe(START)
  })

  it('makes no step of a command that changes nothing', () => {
    run(renamePlan, { name: START.name })
    expect(labels()).toEqual([])
    expect(planStore.getState().plan).toBe(START)
  })

  it('undoes all the way to the very first plan and redoes all the way to the last', () => {
    for (let n = 1; n <= 50; n++) run(renamePlan, { name: `Name ${n}` })
    const last = planStore.getState().plan
    for (let n = 0; n < 60; n++) undo()
    expect(planStore.getState().plan).toBe(START)
    expect(planStore.getState().future).toHaveLength(50)
    for (let n = 0; n < 60; n++) redo()
    expect(planStore.getState().plan).toBe(last)
    expect(labels()).toHaveLength(50)
  })

  it('forgets what could be redone once something else is done', () => {
    run(renamePlan, { name: 'Desk' })
    undo()
    run(renamePlan, { name: 'Bench' })
    redo()
    expect(nameNow()).toBe('Bench')
    undo()
    expect(planStore.getState().plan).toBe(START)
  })

  it('keeps the last steps up to the limit and says that older ones are gone', () => {
    for (let n = 1; n <= HISTORY_LIMIT; n++) run(renamePlan, { name: `Name ${n}` })
    expect(planStore.getState().historyTrimmed).toBe(false)
    run(renamePlan, { name: 'One more' })
    expect(planStore.getState().historyTrimmed).toBe(true)
    for (let n = 0; n < HISTORY_LIMIT + 5; n++) undo()
    expect(nameNow()).toBe('Name 1')
  })

  it('changes the plan without a step where a command says so', () => {
    const silent: Command<string> = {
      name: 'renamePlan',
      history: 'none',
      apply: (plan, name): Plan => ({ ...plan, name }),
    }
    run(silent, 'Quiet')
    expect(nameNow()).toBe('Quiet')
    expect(labels()).toEqual([])
  })

  it('ends the draft of a gesture with every command, undo and redo', () => {
    const draft = { ...START, name: 'half way' }
    for (const end of [() => run(renamePlan, { name: 'Desk' }), undo, redo]) {
      setDraft(draft)
      end()
      expect(sessionStore.getState().draft).toBeNull()
    }
  })

  it('leaves plan and history as they were when a command breaks', () => {
    const broken: Command<null> = {
      name: 'renamePlan',
      history: 'step',
      apply: () => {
        throw new Error('bug')
      },
    }
    expect(() => run(broken, null)).toThrow('bug')
    expect(planStore.getState().plan).toBe(START)
    expect(labels()).toEqual([])
  })
})
