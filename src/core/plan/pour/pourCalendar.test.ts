import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatSlab } from '../../../../tests/support/flatPlan'
import { pourEvents, type PourHeat } from '../../resin'
import { computePlan } from '../computePlan'
import { pourCalendar, type PourCalendarRequest } from './pourCalendar'
import { ANSWERS_ON_THE_SPOT } from './slowAnswers'

function heatAt(roomC: number): PourHeat {
  const option = flatOption(2000, 800, { xMm: -100, yMm: -100 })
  const room = { kind: 'steady', roomC } as const
  const plan = flatPlan(flatSlab({ outline: flatBox(-200, -150, 2000, 640) }), {
    ...option,
    resin: { ...option.resin, room },
  })
  const pour = computePlan(plan, ANSWERS_ON_THE_SPOT).options.get('option')?.pour
  if (pour?.state !== 'ready' || pour.value.heat === null) throw new Error('no heat')
  return pour.value.heat
}

const request = (roomC: number): PourCalendarRequest => ({
  jobId: 'plan-option',
  jobName: 'Käsemanns Tisch; der große, „runde“ aus Ulme \\ Nr. 7',
  heat: heatAt(roomC),
  handlingMinutes: 20,
  firstDay: { year: 2028, month: 2, day: 28 },
  stampUtc: '20280227T101500Z',
  display: { system: 'mm' },
})

const eventsOf = (text: string): readonly ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((part) => new ICAL.Event(part))

describe('the calendar of a pour', () => {
  const text = pourCalendar(request(21))
  const expected = pourEvents(request(21).heat, 20)

  it('POUR-9 is read back whole by an independent reader (ical.js)', () => {
    const events = eventsOf(text)
    expect(events).toHaveLength(expected.length)
    expect(events.map(({ summary }) => summary)[0]).toBe(
      'Käsemanns Tisch; der große, „runde“ aus Ulme \\ Nr. 7: pour 1, 3.30 L',
    )
    events.forEach((event, index) => {
      const hour = expected[index]?.hour ?? NaN
      const start = new Date(Date.UTC(2028, 1, 28) + Math.round(hour * 60) * 60_000)
      // Floating times: the clock on the wall, wherever the file is opened.
      expect(event.startDate.zone).toBe(ICAL.Timezone.localTimezone)
      expect(event.startDate.toString()).toBe(start.toISOString().slice(0, 19))
    })
  })

  it('POUR-9 has a pour, a look and a finger test of each layer, and the demoulding after all of them', () => {
    const kinds = expected.map(({ kind, layer }) => `${kind} ${layer ?? ''}`.trim())
    for (const layer of [1, 2])
      expect(kinds).toEqual(expect.arrayContaining([`pour ${layer}`, `look ${layer}`, `ready ${layer}`]))
    const hours = expected.map(({ hour }) => hour)
    const demould = hours[kinds.indexOf('demould')] ?? NaN
    expect(demould).toBeGreaterThan(
      Math.max(...hours.filter((_, k) => kinds[k]?.startsWith('pour') === true)),
    )
    expect(hours[kinds.indexOf('flatten')]).toBeGreaterThanOrEqual(demould)
  })

  it('POUR-9 keeps its entries apart, and moves them instead of doubling them when the plan changes', () => {
    const uids = eventsOf(text).map(({ uid }) => uid)
    expect(new Set(uids).size).toBe(uids.length)
    const warmer = eventsOf(pourCalendar(request(24)))
    const pour = (events: readonly ICAL.Event[]) => events.find(({ uid }) => uid.includes('layer-2-pour'))
    expect(pour(warmer)?.uid).toBe(pour(eventsOf(text))?.uid)
    expect(pour(warmer)?.startDate.toString()).not.toBe(pour(eventsOf(text))?.startDate.toString())
  })

  it('POUR-9 has lines of at most 75 octets that end in CRLF, and no bare line feed', () => {
    const bytes = new TextEncoder().encode(text)
    const lines = text.split('\r\n')
    expect(lines.at(-1)).toBe('')
    expect(lines.slice(0, -1).every((line) => !/[\r\n]/.test(line))).toBe(true)
    const lengths = lines.map((line) => new TextEncoder().encode(line).length)
    expect(Math.max(...lengths)).toBeLessThanOrEqual(75)
    expect(lengths.filter((length) => length > 70).length).toBeGreaterThan(5)
    expect(bytes.slice(0, 17)).toEqual(new TextEncoder().encode('BEGIN:VCALENDAR\r\n'))
  })
})
