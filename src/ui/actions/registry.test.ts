import { beforeEach, describe, expect, it } from 'vitest'
import { blankPhotoSlab, blankPlan } from '../../core/plan'
import { planStore, showPlan } from '../../state/planStore'
import { renamePlan } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { isTextKey } from '../text/t'
import { actionById, performAction } from './perform'
import { ACTIONS } from './registry'
import { shortcutText } from './shortcutText'

const photo = {
  id: 'p1',
  hash: '0'.repeat(64),
  fileName: 'slab.jpg',
  mediaType: 'image/jpeg',
  widthPx: 3000,
  heightPx: 2000,
  focalLength35mm: null,
  face: 'top',
  observations: [],
  straightLines: [],
} as const

beforeEach(() => {
  showPlan(blankPlan('plan', 'o1'), { kind: 'unsaved' })
  sessionStore.setState({ tool: 'select', stage: 'photo', view: 'photo', selection: null })
})

describe('action registry', () => {
  it('gives every action its own name, a text, and no key that another one has', () => {
    const ids = ACTIONS.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ACTIONS.filter(({ label }) => !isTextKey(label))).toEqual([])
    const keys = ACTIONS.flatMap(({ shortcuts }) => shortcuts.map(shortcutText))
    expect(new Set(keys).size).toBe(keys.length)
  })

  it('leaves the keys alone that the canvas works with', () => {
    const taken = new Set(['Enter', 'Escape', 'Delete', 'Backspace', '[', ']', 'o'])
    const plain = ACTIONS.flatMap(({ shortcuts }) => shortcuts.filter(({ command }) => command !== true))
    expect(plain.filter(({ key }) => taken.has(key) || key.startsWith('Arrow'))).toEqual([])
  })

  it('undoes and redoes, and offers each only where there is a step', () => {
    expect(actionById('undo').isEnabled()).toBe(false)
    run(renamePlan, { name: 'Bench for the school' })
    performAction('undo')
    expect(planStore.getState().plan.name).not.toBe('Bench for the school')
    expect(actionById('undo').isEnabled()).toBe(false)
    performAction('redo')
    expect(planStore.getState().plan.name).toBe('Bench for the school')
    expect(actionById('redo').isEnabled()).toBe(false)
  })

  it('offers the tools of the photo only where there is a photo', () => {
    expect(actionById('tool-mark').isEnabled()).toBe(false)
    const plan = blankPlan('plan', 'o1')
    showPlan({ ...plan, slabs: [blankPhotoSlab('s1', 'Slab', photo, 50)] }, { kind: 'unsaved' })
    expect(actionById('tool-mark').isEnabled()).toBe(true)
  })

  it('takes up a tool with its stage and view, and lays it down when asked again', () => {
    const plan = blankPlan('plan', 'o1')
    showPlan({ ...plan, slabs: [blankPhotoSlab('s1', 'Slab', photo, 50)] }, { kind: 'unsaved' })
    sessionStore.setState({ view: 'table' })
    performAction('tool-outline')
    expect(sessionStore.getState()).toMatchObject({ tool: 'outline', stage: 'trace', view: 'photo' })
    expect(actionById('tool-outline').isPressed?.()).toBe(true)
    performAction('tool-outline')
    expect(sessionStore.getState().tool).toBe('select')
  })

  it('does nothing when an action cannot be done now', () => {
    performAction('tool-mark')
    expect(sessionStore.getState().tool).toBe('select')
  })
})
