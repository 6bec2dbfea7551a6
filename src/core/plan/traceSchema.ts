import * as z from 'zod/mini'

const coordinate = z.number().check(z.minimum(-100_000), z.maximum(100_000))
const place = z.tuple([coordinate, coordinate])
/** Which way of finding lines it was: a later program may find them otherwise, and lines are never found anew by themselves. */
const method = z.string().check(z.maxLength(40))

const stroke = z.strictObject({ kind: z.enum(['wood', 'not-wood']), fromPx: place, toPx: place })

const lengthMm = z.number().check(z.positive(), z.maximum(20_000))
const lengthOrNoneMm = z.number().check(z.nonnegative(), z.maximum(20_000))

const depth = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('through') }),
  z.strictObject({ kind: z.literal('partial'), depthMm: lengthMm }),
])

/** What the line is drawn round. */
export const traceMeaning = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('outline'),
    /** Decayed wood all along the edge that is cut back, from the traced line inwards; left out: none. */
    cutBackMm: z.optional(lengthOrNoneMm),
  }),
  z.strictObject({ kind: z.literal('void'), depth }),
  z.strictObject({ kind: z.literal('crack'), depth }),
  /** Never wood: it is dug out, through the whole slab. */
  z.strictObject({ kind: z.literal('bark') }),
  /** Not to be in the table. */
  z.strictObject({ kind: z.literal('defect') }),
  /** To be in the table. */
  z.strictObject({ kind: z.literal('figure') }),
])

/** How a line first came about; what was mended by hand since then does not change it. */
export const traceOrigin = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('hand') }),
  /** Clung to the edge between the maker's pins. */
  z.strictObject({ kind: z.literal('follow'), method }),
  /** Found from strokes on wood and on what is not wood. */
  z.strictObject({
    kind: z.literal('strokes'),
    method,
    strokes: z.array(stroke).check(z.maxLength(500)),
  }),
  /** Proposed by the program within the outline, and accepted by the maker. */
  z.strictObject({ kind: z.literal('proposed'), method }),
])

/** The slab's live edge between its faces, and how the slab lies in the form. */
export const slabEdges = z.strictObject({
  bevel: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('upright') }),
    /** How far the underside's outline stands outside the top's, all round; below zero: inside. */
    z.strictObject({ kind: z.literal('wider'), mm: z.number().check(z.minimum(-300), z.maximum(300)) }),
  ]),
  faceUpInForm: z.enum(['top', 'underside']),
})
