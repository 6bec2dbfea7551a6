import { pxPoint } from '../../../src/core/geometry'
import {
  refineBoard,
  refineCross,
  refineRoundMark,
  refineRule,
  type PixelWindow,
  type RefinedClick,
  type ScaleInput,
} from '../../../src/core/photo'
import type { FlatReference, MarkReference, Truth } from './photoTruth'

type Px = readonly [number, number]

/** What a maker would set up from one reference: marks with their true places, lengths, and how clicks are refined. */
export interface BenchReference {
  readonly kind: string
  /** True places: slab frame, z up. */
  readonly placesMm: readonly (readonly [number, number, number])[]
  readonly truePx: readonly Px[]
  /** Pairs of marks with a known length. */
  readonly lengths: readonly { readonly a: number; readonly b: number; readonly lengthMm: number }[]
  readonly board: { readonly lengthMm: number; readonly widthMm: number } | null
  /** Mean height of its marks over the slab's face. */
  readonly heightMm: number
  refine(image: PixelWindow, clicks: readonly Px[]): RefinedReference
}

export interface RefinedReference {
  readonly clicks: readonly RefinedClick[]
  /** Straight sides found on the way: they tell the bow of the lens. */
  readonly sides: NonNullable<ScaleInput['straightLines']>
}

/** The references that this bench knows how to use; others are named in `unknown`. */
export function benchReferences(truth: Truth): {
  readonly known: readonly BenchReference[]
  readonly unknown: readonly string[]
} {
  const known: BenchReference[] = []
  const unknown: string[] = []
  for (const reference of truth.references) {
    if ('centers_px' in reference) known.push(ofMarks(reference))
    else if ('corners_top_face_px' in reference && isWhollySeen(reference)) {
      known.push(isRule(reference) ? ofRule(reference) : ofBoard(reference))
    } else if ('corners_top_face_px' in reference) unknown.push(`${reference.type}, partly hidden`)
    else unknown.push(reference.type)
  }
  return { known, unknown }
}

/** Of something narrower than this share of its length only the length is used. */
const RULE_SHARE = 0.1
const isRule = ({ length_mm, width_mm }: FlatReference): boolean => width_mm < RULE_SHARE * length_mm

const isSeen = ({ in_frame, occluded }: MarkReference | FlatReference, i: number): boolean =>
  in_frame?.[i] !== false && occluded?.[i] !== true

const isWhollySeen = (reference: FlatReference): boolean => [0, 1, 2, 3].every((i) => isSeen(reference, i))

/** Marks that the photo does not show cannot be clicked; their distances are of no use. */
function onlySeen(reference: MarkReference): MarkReference {
  const seen = reference.centers_px.flatMap((_, i) => (isSeen(reference, i) ? [i] : []))
  const pairs = Object.entries(reference.pair_distances_mm).flatMap(([key, lengthMm]) => {
    const [a = -1, b = -1] = key.split('-').map((n) => seen.indexOf(Number(n) - 1))
    return a < 0 || b < 0 ? [] : [[`${a + 1}-${b + 1}`, lengthMm] as const]
  })
  return {
    type: reference.type,
    centers_mm: reference.centers_mm.filter((_, i) => seen.includes(i)),
    centers_px: reference.centers_px.filter((_, i) => seen.includes(i)),
    pair_distances_mm: Object.fromEntries(pairs),
  }
}

const ofMarks = (whole: MarkReference): BenchReference => markReferenceOf(onlySeen(whole))

const markReferenceOf = (reference: MarkReference): BenchReference => ({
  kind: reference.type,
  placesMm: reference.centers_mm,
  truePx: reference.centers_px,
  lengths: Object.entries(reference.pair_distances_mm).map(([key, lengthMm]) => {
    const [a = 1, b = 1] = key.split('-').map(Number)
    return { a: a - 1, b: b - 1, lengthMm }
  }),
  board: null,
  heightMm: 0,
  refine: (image, clicks) => ({
    clicks: clicks.map((c) =>
      (reference.type === 'discs' ? refineRoundMark : refineCross)(image, pxPoint(c[0], c[1])),
    ),
    sides: [],
  }),
})

const ofBoard = (reference: FlatReference): BenchReference => ({
  kind: 'board',
  placesMm: reference.corners_top_face_mm,
  truePx: reference.corners_top_face_px,
  lengths: [],
  board: { lengthMm: reference.length_mm, widthMm: reference.width_mm },
  heightMm: reference.thickness_mm,
  refine: (image, clicks) => {
    const [a = [0, 0], b = [0, 0], c = [0, 0], d = [0, 0]] = clicks
    const refined = refineBoard(image, [
      pxPoint(a[0], a[1]),
      pxPoint(b[0], b[1]),
      pxPoint(c[0], c[1]),
      pxPoint(d[0], d[1]),
    ])
    const sides = refined.sides.map(({ pointsPx, sdPx }, i) => ({
      id: `side ${i}`,
      pointsPx,
      sdPx,
      heightMm: reference.thickness_mm,
    }))
    return { clicks: refined.corners, sides }
  },
})

/** Of a thin rule only its length is used: the middles of its two ends. */
function ofRule(reference: FlatReference): BenchReference {
  const ends = <T extends readonly number[]>(
    corners: readonly T[],
    middle: (p: T, q: T) => T,
  ): readonly T[] => {
    const [a, b, c, d] = corners
    if (!a || !b || !c || !d) throw new Error('a rule has four corners')
    return [middle(a, d), middle(b, c)]
  }
  return {
    kind: 'rule',
    placesMm: ends(reference.corners_top_face_mm, (p, q): [number, number, number] => [
      (p[0] + q[0]) / 2,
      (p[1] + q[1]) / 2,
      (p[2] + q[2]) / 2,
    ]),
    truePx: ends(reference.corners_top_face_px, (p, q): [number, number] => [
      (p[0] + q[0]) / 2,
      (p[1] + q[1]) / 2,
    ]),
    lengths: [{ a: 0, b: 1, lengthMm: reference.length_mm }],
    board: null,
    heightMm: reference.thickness_mm,
    refine: (image, clicks) => {
      const [a = [0, 0], b = [0, 0]] = clicks
      return { clicks: refineRule(image, [pxPoint(a[0], a[1]), pxPoint(b[0], b[1])]), sides: [] }
    },
  }
}
