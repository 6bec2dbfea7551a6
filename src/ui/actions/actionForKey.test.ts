import { describe, expect, it } from 'vitest'
import type { Action, Shortcut } from './action'
import { actionForKey, type FocusPlace, type KeyStroke } from './actionForKey'

const action = (id: string, group: Action['group'], shortcuts: readonly Shortcut[]): Action => ({
  id,
  label: 'action-undo',
  group,
  shortcuts,
  isEnabled: () => true,
  perform: () => undefined,
})

const ACTIONS = [
  action('undo', 'edit', [{ key: 'z', command: true }]),
  action('redo', 'edit', [
    { key: 'z', command: true, shift: true },
    { key: 'y', command: true },
  ]),
  action('save', 'job', [{ key: 's', command: true }]),
  action('mark', 'tool', [{ key: 'm' }]),
  action('help', 'help', [{ key: '?' }]),
]

const stroke = (key: string, held: Partial<KeyStroke> = {}): KeyStroke => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
})

const idFor = (key: KeyStroke, place: FocusPlace = 'canvas') => actionForKey(ACTIONS, key, place)?.id ?? null

describe('actionForKey', () => {
  it('takes Ctrl and Cmd alike', () => {
    expect(idFor(stroke('z', { ctrlKey: true }))).toBe('undo')
    expect(idFor(stroke('z', { metaKey: true }))).toBe('undo')
  })

  it('tells undo from redo by Shift, whatever letter case the browser reports', () => {
    expect(idFor(stroke('Z', { ctrlKey: true, shiftKey: true }))).toBe('redo')
    expect(idFor(stroke('y', { ctrlKey: true }))).toBe('redo')
  })

  it('leaves a plain letter to the browser when Ctrl or Alt is held', () => {
    expect(idFor(stroke('m', { ctrlKey: true }))).toBeNull()
    expect(idFor(stroke('m', { altKey: true }))).toBeNull()
    expect(idFor(stroke('z'))).toBeNull()
  })

  it('finds a sign whether or not the keyboard needs Shift for it', () => {
    expect(idFor(stroke('?'))).toBe('help')
    expect(idFor(stroke('?', { shiftKey: true }))).toBe('help')
  })

  it('hears plain keys only while the canvas has the focus, and Ctrl everywhere', () => {
    expect(idFor(stroke('m'), 'canvas')).toBe('mark')
    expect(idFor(stroke('m'), 'elsewhere')).toBeNull()
    expect(idFor(stroke('?'), 'elsewhere')).toBeNull()
    expect(idFor(stroke('z', { ctrlKey: true }), 'elsewhere')).toBe('undo')
  })

  it('leaves a text box its letters and its own undo, but saves from there', () => {
    expect(idFor(stroke('m'), 'text-box')).toBeNull()
    expect(idFor(stroke('z', { ctrlKey: true }), 'text-box')).toBeNull()
    expect(idFor(stroke('s', { ctrlKey: true }), 'text-box')).toBe('save')
  })
})
