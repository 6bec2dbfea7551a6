import { calendarText, type CivilDay, eventUid, type PourEvent, pourEvents, type PourHeat } from '../../resin'
import { formatTemperature, formatVolume, type LengthDisplay } from '../../units'
import { batchesText, calendarNotes, calendarTexts, scuffFirst } from '../text/en/pourCalendar'

export interface PourCalendarRequest {
  /** Of the plan and its option: the same job keeps its entries. */
  readonly jobId: string
  readonly jobName: string
  readonly heat: PourHeat
  readonly handlingMinutes: number
  readonly firstDay: CivilDay
  /** When the file is made, in UTC: YYYYMMDDTHHMMSSZ. */
  readonly stampUtc: string
  readonly display: LengthDisplay
}

/** Looks and pours are short of no warning; a finger test can wait. */
const REMIND_MINUTES: Readonly<Record<PourEvent['kind'], number | null>> = {
  pour: 60,
  look: 10,
  ready: null,
  demould: null,
  flatten: null,
}

/**
 * A calendar file with every pour, look, finger test, the demoulding and the flattening.
 * @returns iCalendar text (RFC 5545), times local to wherever it is opened
 * Rules: POUR-9, RES-23.
 */
export function pourCalendar(request: PourCalendarRequest): string {
  const { jobId, heat, handlingMinutes, firstDay, stampUtc } = request
  return calendarText({
    firstDay,
    stampUtc,
    entries: pourEvents(heat, handlingMinutes).map((event) => ({
      uid: eventUid(jobId, event),
      summary: calendarTexts[event.kind](wordsOf(event, request)),
      description: [
        ...(event.scuffBefore ? [scuffFirst] : []),
        calendarNotes[event.kind](wordsOf(event, request)),
      ].join(' '),
      startHour: event.hour,
      durationMinutes: event.durationMinutes,
      remindMinutesBefore: REMIND_MINUTES[event.kind],
    })),
  })
}

function wordsOf(event: PourEvent, { jobName, heat, display }: PourCalendarRequest) {
  const layer = heat.layers.find(({ layer: number }) => number === event.layer)
  const { count, litresEach } = layer?.batches ?? { count: 0, litresEach: 0 }
  return {
    job: jobName,
    layer: String(event.layer ?? ''),
    amount: formatVolume(layer?.need.mixLitres ?? 0, display),
    batches: batchesText(count, formatVolume(litresEach, display)),
    reading: formatTemperature(event.surfaceC ?? 0, display),
  }
}
