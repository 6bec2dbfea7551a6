import * as z from 'zod/mini'
import { COST_GROUPS, WORK_STEPS } from '../quote'
import { sheetStock } from './formSchema'

const id = z.string().check(z.regex(/^[A-Za-z0-9_-]{1,64}$/))
const shortText = z.string().check(z.maxLength(200))
const cents = z.int().check(z.nonnegative(), z.maximum(1_000_000_000))
const share = z.number().check(z.minimum(0), z.maximum(1))
const hours = z.number().check(z.nonnegative(), z.maximum(10_000))

/** A cost of the maker's own. */
const ownCost = z.strictObject({
  id,
  group: z.enum(COST_GROUPS),
  name: shortText,
  quantity: z.number().check(z.nonnegative(), z.maximum(100_000)),
  unit: z.string().check(z.maxLength(20)),
  unitCents: cents,
})

/** What one option costs besides what is worked out. */
export const optionCosts = z.strictObject({
  baseCents: cents,
  deliveryCents: cents,
  /** Butterfly keys across cracks. */
  keys: z.int().check(z.nonnegative(), z.maximum(500)),
  own: z.array(ownCost).check(z.maxLength(200)),
})

/** The shop's rates, terms and way of working, for all options of a job. */
export const shop = z.strictObject({
  /** ISO 4217. */
  currency: z.string().check(z.regex(/^[A-Z]{3}$/)),
  hourCents: cents,
  hoursPerDay: z.number().check(z.positive(), z.maximum(24)),
  /** Days of the week without work; 0: Sunday. */
  daysOff: z.array(z.int().check(z.minimum(0), z.maximum(6))).check(z.maxLength(6)),
  /** In the maker's order. */
  steps: z
    .array(
      z.strictObject({
        id: z.enum(WORK_STEPS),
        hours,
        waitDays: z.int().check(z.nonnegative(), z.maximum(365)),
      }),
    )
    .check(z.maxLength(100)),
  sheets: z.array(sheetStock).check(z.maxLength(100)),
  sheetKerfMm: z.number().check(z.nonnegative(), z.maximum(20)),
  prices: z.strictObject({
    caulkCentsPerM: cents,
    tapeCentsPerM: cents,
    releaseCentsPerM2: cents,
    dripSheetCentsPerM2: cents,
    screwCents: cents,
    bladeCentsPerM: cents,
    keyCents: cents,
  }),
  finish: z.strictObject({
    name: shortText,
    coats: z.int().check(z.nonnegative(), z.maximum(50)),
    coverM2PerLitre: z.number().check(z.positive(), z.maximum(200)),
    centsPerLitre: cents,
  }),
  failureFraction: share,
  overhead: z.strictObject({ centsPerHour: cents, fraction: share }),
  profit: z.strictObject({
    kind: z.enum(['margin', 'mark-up']),
    fraction: z.number().check(z.minimum(0), z.maximum(0.95)),
  }),
  roundUpToCents: z.int().check(z.minimum(1), z.maximum(1_000_000)),
  taxFraction: share,
  depositFraction: share,
})
