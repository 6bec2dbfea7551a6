import { beforeEach, describe, expect, it, vi } from 'vitest'
import { flatOption, flatPlan, flatPx, flatSlab } from '../../tests/support/flatPlan'
import { blankPlan, type Plan } from '../core/plan'
import type { Command } from './command'
import { moveMark, renamePlan, setPlanNote, settleClicks } from './commands'
import { HISTORY_LIMIT } from './history'
import { planStore, showPlan } from './planStore'
import { amend, redo, run, undo } from './run'
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

  it('gives back by undo and redo what was selected at that step', () => {
    const mark = { kind: 'mark', markId: 'a' } as const
    sessionStore.setState({ selection: mark })
    run(renamePlan, { name: 'Desk' })
    sessionStore.setState({ selection: null })
    undo()
    expect(sessionStore.getState().selection).toEqual(mark)
    redo()
    expect(sessionStore.getState().selection).toBeNull()
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

describe('amend', () => {
  const flat = flatPlan(flatSlab(), flatOption(2000, 800, { xMm: 0, yMm: 0 }))
  const at = { slabId: 'slab', photoId: 'photo', markId: 'a' }
  const clicked = flatPx(3, 2)
  const found = {
    slabId: 'slab',
    photoId: 'photo',
    marks: [
      { markId: 'a', clickPx: clicked, found: { kind: 'refined', px: flatPx(0, 0), sdPx: 0.3 } as const },
    ],
  }
  const markA = () => {
    const capture = planStore.getState().plan.slabs[0]?.capture
    return capture?.kind === 'photo' ? capture.photos[0]?.observations.find((o) => o.markId === 'a') : null
  }

  it('belongs to the step that set the thing: one undo takes back both, one redo brings back both', () => {
    showPlan(flat, { kind: 'unsaved' })
    run(moveMark, { ...at, atPx: clicked, sdPx: 3 })
    amend(settleClicks, found)
    expect(labels()).toEqual(['moveMark'])
    expect(markA()).toMatchObject({ atPx: flatPx(0, 0), sdPx: 0.3, refinement: { clickPx: clicked } })
    undo()
    expect(planStore.getState().plan).toBe(flat)
    redo()
    expect(markA()).toMatchObject({ atPx: flatPx(0, 0), sdPx: 0.3 })
  })

  it('reaches the plans of later steps too, and a step that was undone meanwhile', () => {
    showPlan(flat, { kind: 'unsaved' })
    run(moveMark, { ...at, atPx: clicked, sdPx: 3 })
    run(renamePlan, { name: 'Desk' })
    undo()
    amend(settleClicks, found)
    expect(markA()).toMatchObject({ refinement: { kind: 'refined' } })
    redo()
    expect(planStore.getState().plan.name).toBe('Desk')
    expect(markA()).toMatchObject({ refinement: { kind: 'refined' } })
    undo()
    undo()
    expect(planStore.getState().plan).toBe(flat)
  })

  it('does nothing when the mark has moved on, or is gone', () => {
    showPlan(flat, { kind: 'unsaved' })
    const before = planStore.getState()
    amend(settleClicks, { ...found, slabId: 'gone' })
    amend(settleClicks, found)
    expect(planStore.getState()).toBe(before)
  })
})
