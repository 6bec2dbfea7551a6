import {
  PLACE_WIDTH_MM,
  USUAL_BACKING_MM,
  USUAL_BASE_BEYOND_MM,
  USUAL_ROOM_MM,
  USUAL_SCREW_EVERY_MM,
  USUAL_SIDE_ABOVE_MM,
} from '../form'
import { USUAL_STEPS } from '../quote'
import type { Option, Plan, Slab } from './schema'

/** Nothing said of the wood: flat-sawn, sold by the piece. */
export const blankWood = (): Slab['wood'] => ({
  sawn: 'flat',
  own: null,
  heights: [],
  passMm: 2,
  soldBy: 'piece',
  yardRule: 'mean-width',
  tally: 'exact',
  massKg: null,
})

/** A heated home with dry winters. Common practice, no source. */
export const blankRoom = (): Option['room'] => ({
  roomC: 21,
  dryHumidity: 0.35,
  dampHumidity: 0.6,
  greatestPourMoisture: 0.12,
  screwMm: 6,
})

export const blankForm = (): Option['form'] => ({
  aboveCastMm: USUAL_SIDE_ABOVE_MM,
  baseBeyondMm: USUAL_BASE_BEYOND_MM,
  backingMm: USUAL_BACKING_MM,
  screwEveryMm: USUAL_SCREW_EVERY_MM,
})

/** Feet a little in from ends and sides; the way in is not measured yet. Common practice, no source. */
export const blankStanding = (): Option['standing'] => ({
  base: { kind: 'two-frames', insetLengthMm: 350, insetWidthMm: 100, massKg: 30 },
  placeMm: PLACE_WIDTH_MM,
  door: null,
  lift: null,
  turn: null,
  roomMm: USUAL_ROOM_MM,
})

export const blankCosts = (): Option['quote'] => ({ baseCents: 0, deliveryCents: 0, keys: 0, own: [] })

/** No prices yet: the maker's own. Hours and shares are a beginning (common practice, no source). */
export const blankShop = (): Plan['shop'] => ({
  currency: 'EUR',
  hourCents: 0,
  hoursPerDay: 8,
  daysOff: [0, 6],
  steps: USUAL_STEPS,
  sheets: [{ id: 'sheet-1', name: '', lengthMm: 2440, widthMm: 1220, count: null, costCents: 0 }],
  sheetKerfMm: 3,
  prices: {
    caulkCentsPerM: 0,
    tapeCentsPerM: 0,
    releaseCentsPerM2: 0,
    dripSheetCentsPerM2: 0,
    screwCents: 0,
    bladeCentsPerM: 0,
    keyCents: 0,
  },
  finish: { name: '', coats: 3, coverM2PerLitre: 12, centsPerLitre: 0 },
  failureFraction: 0.05,
  overhead: { centsPerHour: 0, fraction: 0.1 },
  profit: { kind: 'margin', fraction: 0.2 },
  roundUpToCents: 100,
  taxFraction: 0,
  depositFraction: 0.5,
})
