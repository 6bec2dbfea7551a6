import * as z from 'zod/mini'

const id = z.string().check(z.regex(/^[A-Za-z0-9_-]{1,64}$/))
const shortText = z.string().check(z.maxLength(200))
const fraction = z.number().check(z.minimum(0), z.maximum(1))
const cents = z.int().check(z.nonnegative(), z.maximum(1_000_000_000))
const positiveMm = z.number().check(z.positive(), z.maximum(20_000))
const smallMm = z.number().check(z.nonnegative(), z.maximum(500))
const litres = z.number().check(z.nonnegative(), z.maximum(5000))

/** A figure read off a sheet: whatever was typed is kept, and the result says where it cannot be (RES-9). */
const figure = z.number().check(z.minimum(-1_000_000), z.maximum(1_000_000))
const figureOrNone = z.nullable(figure)
const ratio = z.nullable(z.strictObject({ resin: figure, hardener: figure }))

/** What the maker reads off the sheet of the product in hand: `ProductSheet` of core/resin. Null: it does not say. */
const productSheet = z.strictObject({
  name: shortText,
  /** True for the profiles that come with the program, until the sheet in hand has replaced them. */
  isExample: z.boolean(),
  ratioByVolume: ratio,
  ratioByMass: ratio,
  resinDensityKgPerM3: figureOrNone,
  hardenerDensityKgPerM3: figureOrNone,
  mixedDensityKgPerM3: figureOrNone,
  deepestLayerMm: figure,
  referenceC: figure,
  surfacePeakLimitC: figure,
  peakHours: figureOrNone,
  testWidthMm: figureOrNone,
  leastLayerMm: figureOrNone,
  workingTime: z.nullable(z.strictObject({ minutes: figure, massKg: figure, temperatureC: figure })),
  recoatLeastHours: figureOrNone,
  recoatGreatestHours: figureOrNone,
  demouldHours: figureOrNone,
  greatestMassKg: figureOrNone,
  leastRoomC: figureOrNone,
  leastResinC: figureOrNone,
  greatestDyeFraction: figureOrNone,
  packs: z
    .array(z.strictObject({ name: shortText, litres: figure, priceCents: cents }))
    .check(z.maxLength(20)),
})

const celsius = z.number().check(z.minimum(-40), z.maximum(100))
const hourOfDay = z.number().check(z.minimum(0), z.maximum(24))

const room = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('steady'), roomC: celsius }),
  /** A day's swing: half the difference between its warmest and its coolest hour. */
  z.strictObject({
    kind: z.literal('swing'),
    meanC: celsius,
    swingC: z.number().check(z.nonnegative(), z.maximum(40)),
    warmestHour: hourOfDay,
  }),
])

const dye = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('grams'), gramsPerLitre: z.number().check(z.positive(), z.maximum(500)) }),
  z.strictObject({
    kind: z.literal('drops'),
    dropsPerLitre: z.number().check(z.positive(), z.maximum(5000)),
    gramsPerDrop: z.number().check(z.positive(), z.maximum(1)),
  }),
])

/** Thin resin brushed on before the pour, so that the edge does not bubble and soak. */
const sealCoat = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  z.strictObject({
    kind: z.literal('coat'),
    covers: z.enum(['edges', 'edges-and-faces']),
    gramsPerM2: z.number().check(z.positive(), z.maximum(2000)),
  }),
])

/** A pour as it really went, for the refit (core/resin `LoggedPour`). */
const loggedPour = z.strictObject({
  id,
  name: shortText,
  depthMm: figure,
  /** Null: a wide gap. */
  widthMm: figureOrNone,
  roomC: figure,
  resinC: figure,
  air: z.enum(['still', 'fans']),
  surfacePeakC: figure,
  /** Hours from the pour to the peak; null: not seen. */
  peakHours: figureOrNone,
})

export const resinChoice = z.strictObject({
  sheet: productSheet,
  /** Depth of the cast, mm; null: as thick as the slab. */
  castThicknessMm: z.nullable(positiveMm),
  /** Left in buckets and lost, as a share of what fills the gaps. */
  lossFraction: fraction,
  /** Space between wood and form. */
  clearanceMm: smallMm,
  /** Resin over the whole face, on top of the cast; null: none. */
  floodMm: z.nullable(positiveMm),
  /** Height of the hollow under a cupped slab; 0: it lies flat. */
  underCupMm: smallMm,
  sealCoat,
  /** Measured on the dry fit in the form; replaces the computed volume. Null: not measured. */
  measuredLitres: z.nullable(litres.check(z.positive())),
  form: z.strictObject({
    /** Inside height; null: not built yet. */
    heightMm: z.nullable(positiveMm),
    baseThicknessMm: positiveMm,
    /** Distance between the bars that hold the pieces down. */
    barEveryMm: positiveMm,
  }),
  /** Of the wood as it lies in the form; null: the usual one. */
  woodDensityKgPerM3: z.nullable(z.number().check(z.minimum(50), z.maximum(2000))),
  room,
  air: z.enum(['still', 'fans']),
  beneath: z.enum(['board-on-bench', 'open', 'insulated']),
  /** Of the mixed resin when it is poured; null: as warm as the room. */
  resinC: z.nullable(celsius),
  start: z.strictObject({
    /** Day of the first pour, YYYY-MM-DD; null: not settled. */
    day: z.nullable(z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/))),
    hour: hourOfDay,
  }),
  /** Hours between which the maker is about. */
  waking: z.strictObject({ fromHour: hourOfDay, toHour: hourOfDay }),
  /** From the first stir to the last drop of one batch. */
  handlingMinutes: z.number().check(z.minimum(1), z.maximum(1440)),
  /** What the bucket holds; null: no limit. */
  bucketKg: z.nullable(z.number().check(z.positive(), z.maximum(1000))),
  dye: z.nullable(dye),
  /** Layers changed by hand, from the first; null leaves that figure to the plan. */
  layers: z
    .array(
      z.strictObject({
        depthMm: z.nullable(positiveMm),
        /** Hours from midnight before the first pour. */
        startHour: z.nullable(z.number().check(z.minimum(0), z.maximum(10_000))),
      }),
    )
    .check(z.maxLength(60)),
  /** The maker's explicit word that a layer may be deeper than the sheet, as far as the model allows. */
  beyondSheet: z.boolean(),
  /** Resin already on the shelf, litres of mix. */
  haveLitres: litres,
  /** Bought in addition to the need, as a share. */
  packMarginFraction: fraction,
  log: z.array(loggedPour).check(z.maxLength(200)),
})
