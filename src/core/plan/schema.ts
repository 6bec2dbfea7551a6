import * as z from 'zod/mini'
import type { PxPoint, SlabPoint, TablePoint } from '../geometry'
import { coverWishes, slabStock } from './coverSchema'
import { formChoice, standing } from './formSchema'
import { optionCosts, shop } from './quoteSchema'
import { GREATEST_LENGTH_MM, PLAN_VERSION } from './planLimits'
import { resinChoice } from './resinSchema'
import { clientRoom, slabWood } from './woodSchema'
import { slabEdges, traceMeaning, traceOrigin } from './traceSchema'

const id = z.string().check(z.regex(/^[A-Za-z0-9_-]{1,64}$/))
const shortText = z.string().check(z.maxLength(200))
const longText = z.string().check(z.maxLength(4000))
const coordinate = z.number().check(z.minimum(-100_000), z.maximum(100_000))
const lengthMm = z.number().check(z.positive(), z.maximum(GREATEST_LENGTH_MM))
const lengthOrNoneMm = z.number().check(z.nonnegative(), z.maximum(GREATEST_LENGTH_MM))
const fraction = z.number().check(z.minimum(0), z.maximum(1))
const cents = z.int().check(z.nonnegative(), z.maximum(1_000_000_000))

// The branded points are made here and in geometry/point.ts, nowhere else.
const pair = z.tuple([coordinate, coordinate])
const pxPair = pair as unknown as z.ZodMiniType<PxPoint, PxPoint>
const slabPair = pair as unknown as z.ZodMiniType<SlabPoint, SlabPoint>
const tablePair = pair as unknown as z.ZodMiniType<TablePoint, TablePoint>

const isometry = z.strictObject({
  xMm: coordinate,
  yMm: coordinate,
  angleRad: z.number().check(z.minimum(-10), z.maximum(10)),
  turnedOver: z.boolean(),
})

const mark = z.strictObject({ id, name: shortText, heightMm: lengthOrNoneMm })

const tapedDistance = z.strictObject({ id, markIds: z.tuple([id, id]), lengthMm })

/** A rectangle of known size lying on the slab: four marks in order round it; their height is its thickness. */
const board = z.strictObject({
  id,
  name: shortText,
  cornerIds: z.tuple([id, id, id, id]),
  lengthMm,
  widthMm: lengthMm,
})

/** A rule, folding rule or batten lying on the slab: two marks at its ends; their height is its thickness. */
const rule = z.strictObject({ id, name: shortText, endIds: z.tuple([id, id]), lengthMm })

const sdPx = z.nullable(z.number().check(z.positive(), z.maximum(1000)))

const observation = z.strictObject({
  markId: id,
  atPx: pxPair,
  /** Standard deviation of `atPx`, photo px, from the zoom at which it was set or from the refinement; null: not known. */
  sdPx,
  /** What the program made of the maker's click. `kept`: the maker wants it where it was set. */
  refinement: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('none') }),
    z.strictObject({ kind: z.literal('refined'), clickPx: pxPair, clickSdPx: sdPx }),
    z.strictObject({ kind: z.literal('unsure') }),
    z.strictObject({ kind: z.literal('kept') }),
  ]),
})

/** Points along something straight on the slab's face (chalk line, track): what is left of a bend is the lens's bow. */
const straightLine = z.strictObject({
  id,
  pointsPx: z.array(pxPair).check(z.maxLength(200)),
  sdPx,
})

const photo = z.strictObject({
  id,
  /** SHA-256 of the stored bytes (location removed), lower-case hex. */
  hash: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  fileName: shortText,
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp']),
  widthPx: z.int().check(z.positive(), z.maximum(65_535)),
  heightPx: z.int().check(z.positive(), z.maximum(65_535)),
  /** From the file, as if on 35 mm film; null where it says nothing. Believed a little, never required. */
  focalLength35mm: z.nullable(z.number().check(z.positive(), z.maximum(2000))),
  /** Which face of the slab is seen. A later photo of the underside shows the slab mirrored. */
  face: z.enum(['top', 'underside']),
  observations: z.array(observation),
  straightLines: z.array(straightLine).check(z.maxLength(50)),
})

/** How flat the face is known to be: bow by a straightedge along it, twist by winding sticks at its ends. */
const flatness = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('unknown') }),
  z.strictObject({
    kind: z.literal('read'),
    bowMm: z.number().check(z.minimum(-500), z.maximum(500)),
    twistMm: z.number().check(z.minimum(-500), z.maximum(500)),
    readingSdMm: z.number().check(z.minimum(0), z.maximum(100)),
  }),
])

const trace = z.strictObject({
  id,
  photoId: id,
  meaning: traceMeaning,
  ringPx: z.array(pxPair).check(z.maxLength(20_000)),
  origin: traceOrigin,
})

const capture = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('photo'),
    photos: z.array(photo),
    /** The chalked line: its two anchors in photo pixels are the slab frame's origin and x direction. */
    datum: z.nullable(z.strictObject({ photoId: id, fromPx: pxPair, toPx: pxPair })),
    traces: z.array(trace),
  }),
  z.strictObject({
    kind: z.literal('stations'),
    /** Along a datum chalked on the slab; left and right as one looks along it, from the datum to each edge. */
    stations: z.array(z.strictObject({ alongMm: lengthOrNoneMm, leftMm: coordinate, rightMm: coordinate })),
  }),
])

const slab = z.strictObject({
  id,
  name: shortText,
  tag: shortText,
  species: z.nullable(shortText),
  /** As the slab lies; null until it is measured: nobody can see it in the photo. */
  thicknessMm: z.nullable(lengthMm),
  moistureFraction: z.nullable(fraction),
  priceCents: z.nullable(cents),
  marks: z.array(mark),
  tapedDistances: z.array(tapedDistance),
  boards: z.array(board),
  rules: z.array(rule),
  flatness,
  stock: slabStock,
  wood: slabWood,
  /** Left out: upright, top up. */
  edges: z.optional(slabEdges),
  capture,
})

const tableOutline = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('rectangle'), lengthMm, widthMm: lengthMm }),
  z.strictObject({ kind: z.literal('rounded'), lengthMm, widthMm: lengthMm, cornerRadiusMm: lengthMm }),
  z.strictObject({ kind: z.literal('oval'), lengthMm, widthMm: lengthMm }),
  z.strictObject({ kind: z.literal('free'), ring: z.array(tablePair).check(z.maxLength(2_000)) }),
])

const tableSide = z.strictObject({
  finish: z.enum(['sawn', 'filled', 'live']),
  oversizeMm: lengthOrNoneMm,
})

const table = z.strictObject({
  outline: tableOutline,
  /** Finished thickness of the top. */
  thicknessMm: lengthMm,
  /** start: x = 0, end: x = length, far: y = 0, near: y = width, in the table frame. */
  sides: z.strictObject({ start: tableSide, end: tableSide, far: tableSide, near: tableSide }),
})

const cut = z.discriminatedUnion('kind', [
  /** Along one side of the blank where the footprint lies. */
  z.strictObject({
    kind: z.literal('footprint'),
    id,
    side: z.enum(['start', 'end', 'far', 'near']),
    kerfMm: lengthOrNoneMm,
  }),
  /** A straight line that divides one named piece; the waste side (seen from `from` to `to`) gives up the kerf. */
  z.strictObject({
    kind: z.literal('line'),
    id,
    pieceId: id,
    from: slabPair,
    to: slabPair,
    kerfMm: lengthOrNoneMm,
    wasteSide: z.enum(['left', 'right']),
  }),
])

/** A piece of slab by name: whatever connected wood its anchor lies in once the cuts are made. */
const piece = z.strictObject({ id, name: shortText, slabId: id, anchor: slabPair })

const placement = z.strictObject({ id, pieceId: id, pose: isometry })

const option = z.strictObject({
  id,
  name: shortText,
  table,
  /** Where the table lies on a slab: pose of the table frame in the slab frame; null until it is laid down. */
  footprint: z.nullable(z.strictObject({ slabId: id, pose: isometry })),
  cuts: z.array(cut),
  pieces: z.array(piece),
  /** Pose of the slab frame in the table frame for each piece that is laid into a gap. */
  placements: z.array(placement),
  leastJointMm: lengthOrNoneMm,
  cover: coverWishes,
  resin: resinChoice,
  room: clientRoom,
  form: formChoice,
  standing,
  quote: optionCosts,
})

/** Everything the maker said; nothing that can be computed. */
export const planSchema = z.strictObject({
  format: z.literal('waneline-plan'),
  version: z.literal(PLAN_VERSION),
  id,
  name: shortText,
  note: longText,
  /** True for demo jobs: people, places and prices in it are made up, and the screen says so. */
  invented: z.boolean(),
  shop,
  slabs: z.array(slab).check(z.maxLength(200)),
  options: z.array(option).check(z.maxLength(200)),
})

type DeepReadonly<T> = T extends PxPoint | SlabPoint | TablePoint
  ? T
  : T extends object
    ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
    : T

export type Plan = DeepReadonly<z.infer<typeof planSchema>>
export type Slab = Plan['slabs'][number]
export type Option = Plan['options'][number]
export type Photo = Extract<Slab['capture'], { kind: 'photo' }>['photos'][number]
export type Trace = Extract<Slab['capture'], { kind: 'photo' }>['traces'][number]
export type Table = Option['table']
export type TableSideName = keyof Table['sides']
export type Cut = Option['cuts'][number]
