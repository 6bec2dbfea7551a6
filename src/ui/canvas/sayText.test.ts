import { describe, expect, it } from 'vitest'
import { toolScene } from '../../../tests/support/toolScene'
import type { Say } from './say'
import { sayText, selectionName } from './sayText'

const scene = toolScene()
const say = (event: Say) => sayText(event, scene, { system: 'mm' })

describe('sayText', () => {
  it('names what was selected, a table with its size', () => {
    expect(say({ kind: 'selected', selection: { kind: 'mark', markId: 'c' } })).toBe('Mark C selected.')
    expect(say({ kind: 'selected', selection: { kind: 'footprint' } })).toBe(
      'Table selected, 2000 mm by 800 mm.',
    )
    expect(
      sayText({ kind: 'selected', selection: { kind: 'footprint' } }, scene, {
        system: 'inch',
        fraction: 16,
      }),
    ).toBe('Table selected, 6′ 6 3/4″ by 2′ 7 1/2″.')
  })

  it('counts points', () => {
    expect(say({ kind: 'point-set', number: 7 })).toBe('Point 7 set.')
    expect(say({ kind: 'point-taken-back', left: 6 })).toBe('Last point taken back, 6 left.')
    expect(say({ kind: 'points-missing', placed: 2 })).toBe(
      'A closed line needs at least 3 points; 2 so far.',
    )
    expect(say({ kind: 'trace-closed', meaning: 'outline', points: 12 })).toBe('Closed with 12 points.')
  })

  it('names marks by their letters', () => {
    expect(say({ kind: 'mark-moved', markId: 'd' })).toBe('Mark D moved.')
  })

  it('names traces and their points, cuts and the datum', () => {
    expect(selectionName({ kind: 'trace', traceId: 'outline', point: 3 }, scene)).toBe('Outline, point 4')
    expect(selectionName({ kind: 'cut', cutId: 'cut-start' }, scene)).toBe('Cut 1')
    expect(selectionName({ kind: 'datum', end: 'to' }, scene)).toBe('Datum line, end')
  })
})
