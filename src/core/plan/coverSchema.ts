import * as z from 'zod/mini'

const lengthOrNone = z.nullable(z.number().check(z.positive(), z.maximum(20_000)))
const smallMm = z.number().check(z.nonnegative(), z.maximum(500))
const fractionOrNone = z.nullable(z.number().check(z.minimum(0), z.maximum(1)))

/** What is said of a slab to choose it, dry it and flatten it. */
export const slabStock = z.strictObject({
  /** Three lengths by tape, as in the yard; they serve until the slab has a photo or stations. */
  tape: z.strictObject({ lengthMm: lengthOrNone, narrowestMm: lengthOrNone, widestMm: lengthOrNone }),
  /** Taken off both faces together until they are flat. */
  flatteningMm: smallMm,
  /** Moisture when it is poured; null: as now. */
  pourMoistureFraction: fractionOrNone,
  /** Share of its width that it loses on the way there; null: not known. */
  shrinkageFraction: z.nullable(z.number().check(z.minimum(0), z.maximum(0.2))),
  /** Why it is out of the question; null: it is not. */
  rejected: z.nullable(z.string().check(z.maxLength(200))),
})

/** What the maker wants of the table's place on the slab. */
export const coverWishes = z.strictObject({
  /** Where wood is worth most. */
  woodAt: z.enum(['anywhere', 'long-edges', 'ends']),
  voids: z.enum(['welcome', 'as-gaps', 'unwelcome']),
  /** The grain, along the datum, runs along the table within this; null: any way. */
  grainWithinRad: z.nullable(z.number().check(z.minimum(0), z.maximum(Math.PI / 2))),
  /** Most resin that the maker accepts, as a share of the top. */
  mostResinShare: z.number().check(z.minimum(0), z.maximum(0.9)),
  /** Taken off after the cast until both faces are clean. */
  cleaningMm: smallMm,
  /** Widest band of resin between two slabs. */
  mostBandMm: smallMm,
})
