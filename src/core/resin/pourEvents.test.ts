import { describe, expect, it } from 'vitest'
import { pourCase, settingAt } from '../../../tests/support/pourCase'
import { eventUid, pourEvents } from './pourEvents'
import { pourPlan } from './pourPlan'

const eventsAt = (roomC: number) => {
  const { heat } = pourPlan(pourCase(54, settingAt(roomC)))
  if (heat === null) throw new Error('no heat')
  return { heat, events: pourEvents(heat, 30) }
}

describe('pourEvents', () => {
  it('RES-23 each pour, its looks and its finger test, then demoulding and flattening, in order of time', () => {
    const { heat, events } = eventsAt(24)
    const hours = events.map(({ hour }) => hour)
    expect(hours).toEqual([...hours].sort((a, b) => a - b))
    expect(events.filter(({ kind }) => kind === 'pour').map(({ hour }) => hour)).toEqual(
      heat.layers.map(({ startHour }) => startHour),
    )
    expect(events.filter(({ kind }) => kind === 'look')).toHaveLength(
      heat.layers.reduce((sum, { looks }) => sum + looks.length, 0),
    )
    expect(events.slice(-2).map(({ kind }) => kind)).toEqual(['demould', 'flatten'])
  })

  it('RES-23 a pour lasts as long as its batches', () => {
    const { heat, events } = eventsAt(24)
    const [first] = events
    expect(first).toMatchObject({ kind: 'pour', layer: 1 })
    expect(first?.durationMinutes).toBe(30 * (heat.layers[0]?.batches.count ?? NaN))
  })

  it('RES-23 UIDs are each their own, and stay when the hours move', () => {
    const uids = (roomC: number): readonly string[] =>
      eventsAt(roomC).events.map((event) => eventUid('job-7', event))
    const warm = uids(24)
    expect(new Set(warm).size).toBe(warm.length)
    expect([...uids(22)].sort()).toEqual([...warm].sort())
    expect(warm).toContain('job-7-layer-1-pour@waneline')
  })
})
