import * as z from 'zod/mini'

const cents = z.int().check(z.nonnegative(), z.maximum(1_000_000_000))
const lengthMm = z.number().check(z.positive(), z.maximum(20_000))
const smallMm = z.number().check(z.nonnegative(), z.maximum(500))

/** A sheet of board that is sold or in the shop; null count: as many as one buys. */
export const sheetStock = z.strictObject({
  id: z.string().check(z.regex(/^[A-Za-z0-9_-]{1,64}$/)),
  name: z.string().check(z.maxLength(200)),
  lengthMm,
  widthMm: lengthMm,
  count: z.nullable(z.int().check(z.nonnegative(), z.maximum(100))),
  costCents: cents,
})

/** How the form is built; its board, height and bars are with the resin. */
export const formChoice = z.strictObject({
  aboveCastMm: smallMm,
  baseBeyondMm: smallMm,
  backingMm: z.number().check(z.positive(), z.maximum(1000)),
  screwEveryMm: z.number().check(z.positive(), z.maximum(2000)),
})

const opening = z.strictObject({ widthMm: lengthMm, heightMm: lengthMm })

/** What the top stands on, who sits at it, and the way in. Null: there is none, or nobody measured it. */
export const standing = z.strictObject({
  base: z.strictObject({
    kind: z.enum(['four-legs', 'two-frames', 'pedestal']),
    insetLengthMm: z.number().check(z.nonnegative(), z.maximum(20_000)),
    insetWidthMm: z.number().check(z.nonnegative(), z.maximum(20_000)),
    massKg: z.number().check(z.nonnegative(), z.maximum(2000)),
  }),
  placeMm: z.number().check(z.minimum(300), z.maximum(2000)),
  door: z.nullable(opening),
  lift: z.nullable(
    z.strictObject({ door: opening, widthMm: lengthMm, depthMm: lengthMm, heightMm: lengthMm }),
  ),
  turn: z.nullable(z.strictObject({ beforeMm: lengthMm, afterMm: lengthMm, headroomMm: lengthMm })),
  /** Kept free all round on the way. */
  roomMm: smallMm,
})
