import { civilDay, type Option, pourCalendar } from '../../../core/plan'
import type { PourHeat } from '../../../core/resin'
import { ok, problem } from '../../../core/units'
import { planStore } from '../../../state/planStore'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { ParsedField } from '../../fields/ParsedField'
import { handOut } from '../../files/handOut'
import { t } from '../../text/t'
import { useDisplay } from '../../text/useDisplay'
import { changeResin } from './usePour'

/** Now in UTC, as calendars write it. */
const stampUtc = (): string => `${new Date().toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`

function FirstPourFields({ option }: { readonly option: Option }) {
  const { start } = option.resin
  const set = (changes: Partial<typeof start>) => changeResin(option.id, { start: { ...start, ...changes } })
  return (
    <div className="field-pairs">
      <ParsedField<string | null>
        label={t('place-first-day')}
        shown={start.day ?? ''}
        placeholder={t('place-day-hint')}
        parse={(text) => {
          const day = text.trim()
          if (day === '') return ok(null)
          return civilDay(day) === null ? problem('day-not-understood', { text: day.slice(0, 60) }) : ok(day)
        }}
        onCommit={(day) => set({ day })}
      />
      <OptionalNumberField
        label={t('place-first-hour')}
        value={start.hour}
        limits={{ least: 0, greatest: 24 }}
        onChange={(hour) => hour !== null && set({ hour })}
      />
    </div>
  )
}

/** When the first pour is, and all that follows as a calendar file. */
export function CalendarPart({ option, heat }: { readonly option: Option; readonly heat: PourHeat }) {
  const display = useDisplay()
  const firstDay = civilDay(option.resin.start.day)
  const save = () => {
    if (firstDay === null) return
    const { plan } = planStore.getState()
    const text = pourCalendar({
      jobId: `${plan.id}-${option.id}`,
      jobName: plan.name,
      heat,
      handlingMinutes: option.resin.handlingMinutes,
      firstDay,
      stampUtc: stampUtc(),
      display,
    })
    handOut(new Blob([text], { type: 'text/calendar' }), 'pours.ics')
  }
  return (
    <>
      <FirstPourFields option={option} />
      {firstDay === null ? (
        <p className="note">{t('pour-calendar-needs-day')}</p>
      ) : (
        <div className="button-row">
          <button type="button" className="button button-main" onClick={save}>
            {t('pour-calendar')}
          </button>
          <span className="note">{t('pour-calendar-note')}</span>
        </div>
      )}
    </>
  )
}
