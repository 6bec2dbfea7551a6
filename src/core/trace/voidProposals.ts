import { pxPoint, ringAreaMm2, ringPerimeterMm, simplifyRing, type PxPoint } from '../geometry'
import { countedSlices } from './countedSlices'
import { lightnessAgainstWood } from './lightnessAgainstWood'
import { grownMask } from './maskGrowth'
import { maskOutline } from './maskOutline'
import { maskParts, withoutHoles, type Mask } from './maskRegions'
import { reducedColours, type Picture } from './picture'
import { ringMask } from './ringMask'

/** A dark place within the outline, for the maker to accept or not. */
export interface VoidProposal {
  readonly kind: 'void' | 'crack'
  /** Positive ring in photo pixels. */
  readonly ringPx: readonly PxPoint[]
  /** Mean lightness against the wood round about, 0 to 1: the darker, the surer. */
  readonly lightnessFraction: number
}

/** Longer side of the copy that is searched. */
const SEARCH_SIDE_PX = 1500
/** Against the wood round about: a hole has some place as dark as the first, and ends at the second. */
const DEEP = 0.45
const DARK = 0.67
const LEAST_DEEP_SHARE = 0.1
/** Pieces of one crack closer than twice this are one. */
const BRIDGE_PX = 3
/** About 400 mm² when a slab of two and a half metres fills the photo. */
const LEAST_AREA_PX = 90
/** Nearer to the outline it is the edge's own shadow. */
const RIM_PX = 5
/** Perimeter² / area: a circle has 12.6, a slit ten times as long as wide about 48. */
const CRACK_SLENDERNESS = 60

/** A part as a mask of its own, as small as may be, with a rim round it. */
function cutOut(
  part: readonly number[],
  widthPx: number,
  rimPx = 1,
): { readonly mask: Mask; readonly x: number; readonly y: number } {
  let left = Infinity
  let right = 0
  for (const at of part) {
    left = Math.min(left, at % widthPx)
    right = Math.max(right, at % widthPx)
  }
  const rows = part.map((at) => Math.floor(at / widthPx))
  const top = rows.reduce((least, row) => Math.min(least, row), Infinity)
  const bottom = rows.reduce((most, row) => Math.max(most, row), 0)
  const wide = right - left + 1 + 2 * rimPx
  const high = bottom - top + 1 + 2 * rimPx
  const inside = new Uint8Array(wide * high)
  for (const [n, at] of part.entries())
    inside[((rows[n] ?? 0) - top + rimPx) * wide + (at % widthPx) - left + rimPx] = 1
  return { mask: { widthPx: wide, heightPx: high, inside }, x: left - rimPx, y: top - rimPx }
}

/** Lit walls and bottoms make notches in what is dark: they are closed up to this share of the hole's size. */
const CLOSING_SHARE = 0.2

/** Gaps and notches of a few pixels closed; the largest piece. */
function closedUp(part: readonly number[], widthPx: number): readonly number[] {
  const reach = Math.max(BRIDGE_PX, Math.round(CLOSING_SHARE * Math.sqrt(part.length)))
  const { mask, x, y } = cutOut(part, widthPx, reach + 1)
  const closed = withoutHoles(grownMask(grownMask(mask, reach), -reach))
  const [largest = []] = maskParts(closed).toSorted((a, b) => b.length - a.length)
  return largest.map((at) => (Math.floor(at / mask.widthPx) + y) * widthPx + (at % mask.widthPx) + x)
}

/** Levels that a hole's rim is tried at: stained wood round a hole is dark, too, but its rim is soft. */
const RIM_LEVELS = [0.52, 0.58, 0.63, DARK]
/** Of the dark part at least this share is the hole itself. */
const LEAST_HOLE_SHARE = 0.5

/** The pixels of a part below that level at which its rim is sharpest. */
function sharpest(part: readonly number[], fractions: Float32Array, widthPx: number): readonly number[] {
  const at = (n: number): number => Math.min(1.2, fractions[n] ?? 1)
  let best = part
  let most = 0
  for (const level of RIM_LEVELS) {
    const below = part.filter((n) => at(n) < level)
    if (below.length < LEAST_HOLE_SHARE * part.length) continue
    let steepness = 0
    let rim = 0
    for (const n of below) {
      for (const step of [1, -1, widthPx, -widthPx]) {
        if (at(n + step) < level) continue
        steepness += at(n + 2 * step) - at(n - step)
        rim++
      }
    }
    if (steepness / rim <= most) continue
    most = steepness / rim
    best = below
  }
  return closedUp(best, widthPx)
}

function proposalFrom(
  part: readonly number[],
  fractions: Float32Array,
  widthPx: number,
  factor: number,
): VoidProposal | null {
  if (part.length < LEAST_AREA_PX) return null
  const dark = part.map((at) => fractions[at] ?? 9).filter((fraction) => fraction < DARK)
  const deep = dark.filter((fraction) => fraction < DEEP).length
  if (deep < LEAST_DEEP_SHARE * dark.length) return null
  const { mask, x, y } = cutOut(sharpest(part, fractions, widthPx), widthPx)
  const ring = maskOutline(withoutHoles(mask)).map(([i, j]) => pxPoint((i + x) * factor, (j + y) * factor))
  const ringPx = simplifyRing(ring, factor)
  if (ringPx.length < 3) return null
  const slenderness = ringPerimeterMm(ringPx) ** 2 / Math.abs(ringAreaMm2(ringPx))
  return {
    kind: slenderness > CRACK_SLENDERNESS ? 'crack' : 'void',
    ringPx,
    lightnessFraction: dark.reduce((sum, fraction) => sum + fraction, 0) / Math.max(1, dark.length),
  }
}

/**
 * Holes, pockets and cracks within an outline: places much darker than the wood round about. A dark knot may be taken
 * for one, and a pocket with lit walls may be missed; so each is a proposal.
 * Yields the share done between slices of work.
 */
export function* voidProposals(
  picture: Picture,
  outlinePx: readonly PxPoint[],
): Generator<number, readonly VoidProposal[]> {
  const factor = Math.max(1, Math.round(Math.max(picture.widthPx, picture.heightPx) / SEARCH_SIDE_PX))
  const { widthPx, heightPx, planes } = yield* countedSlices(reducedColours(picture, factor), 0, 0.3, 8)
  yield 0.3
  const slab = ringMask(outlinePx, widthPx, heightPx, factor)
  const core = grownMask(slab, -RIM_PX)
  yield 0.4
  const fractions = lightnessAgainstWood(planes[0], slab)
  yield 0.6
  const inside = fractions.map((fraction, at) => (fraction < DARK && slab.inside[at] === 1 ? 1 : 0))
  const bridged = grownMask(
    grownMask({ widthPx, heightPx, inside: Uint8Array.from(inside) }, BRIDGE_PX),
    -BRIDGE_PX,
  )
  yield 0.7
  const found: VoidProposal[] = []
  for (const part of maskParts(bridged)) {
    if (part.some((at) => core.inside[at] !== 1)) continue
    const proposal = proposalFrom(part, fractions, widthPx, factor)
    if (proposal !== null) found.push(proposal)
    yield 0.8
  }
  return found
}
