import { orderOfWork, type WorkOrder } from '../../quote'
import { civilDay, weekdayOf } from '../hourText'
import type { BuildTask } from './buildTask'

/** The steps with their days round the pour; without a date every day is a day of work. Rules: BLD-7. */
export function workFigures({ option, shop, pour }: BuildTask): WorkOrder {
  const first = civilDay(option.resin.start.day)
  const firstWeekday = first === null ? null : weekdayOf(first)
  return orderOfWork({
    steps: shop.steps,
    hoursPerDay: shop.hoursPerDay,
    isShopDay: (day) => firstWeekday === null || !shop.daysOff.includes((((firstWeekday + day) % 7) + 7) % 7),
    pour: pour ?? { lastPourHour: null, demouldHour: null, flattenHour: null },
  })
}
