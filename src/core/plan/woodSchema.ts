import * as z from 'zod/mini'

const share = z.number().check(z.minimum(0), z.maximum(1))
const shrinkage = z.number().check(z.minimum(0.005), z.maximum(0.3))
const coordinate = z.number().check(z.minimum(-100_000), z.maximum(100_000))
const positiveMm = z.number().check(z.positive(), z.maximum(20_000))

/** A kind of wood that is not in the table, or the maker's own figures of one that is. */
const ownSpecies = z.strictObject({
  /** Oven-dry mass over volume at 12 % moisture, relative to water. */
  gravity: z.number().check(z.minimum(0.1), z.maximum(1.4)),
  radialFraction: shrinkage,
  tangentialFraction: shrinkage,
  volumetricFraction: shrinkage,
  elasticityGPa: z.nullable(z.number().check(z.positive(), z.maximum(40))),
})

/** What is said of a slab's wood: how it is sawn, how it lies, how it was sold. */
export const slabWood = z.strictObject({
  sawn: z.enum(['flat', 'between', 'quarter']),
  /** Null: the table's figures for the species that is named. */
  own: z.nullable(ownSpecies),
  /** Heights over a level line, in the slab frame. */
  heights: z
    .array(
      z.strictObject({
        xMm: coordinate,
        yMm: coordinate,
        topMm: z.number().check(z.minimum(-2000), z.maximum(2000)),
        /** Null: as thick as the slab. */
        thicknessMm: z.nullable(positiveMm),
      }),
    )
    .check(z.maxLength(200)),
  /** Depth of one pass of the cutter. */
  passMm: z.number().check(z.positive(), z.maximum(20)),
  /** The slab's price is for one of these. */
  soldBy: z.enum(['piece', 'board-foot', 'cubic-metre', 'kilogram']),
  yardRule: z.enum(['mean-width', 'longest-widest']),
  tally: z.enum(['exact', 'surface-feet']),
  /** Weighed; null: worked out. */
  massKg: z.nullable(z.number().check(z.positive(), z.maximum(5000))),
})

/** The air that the table will live in, and what the maker wants of the wood for it. */
export const clientRoom = z.strictObject({
  roomC: z.number().check(z.minimum(-10), z.maximum(45)),
  /** Relative humidity in the driest and the dampest season. */
  dryHumidity: share,
  dampHumidity: share,
  /** No sealing and pouring above it. */
  greatestPourMoisture: share,
  /** Shank of the screws that hold the base. */
  screwMm: z.number().check(z.positive(), z.maximum(30)),
})
