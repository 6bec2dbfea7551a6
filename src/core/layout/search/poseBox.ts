import { areaInBox } from './areaKernel'
import { bandBox, type MiddlePose, type TableBand, type WorthTerm } from './poseWorth'

/** A box of poses: middles within a rectangle whose axes are turned by `frameRad`, and directions about a middle. */
export interface PoseBox extends MiddlePose {
  readonly frameRad: number
  readonly halfAlongMm: number
  readonly halfAcrossMm: number
  readonly halfAngleRad: number
  /** No pose of the box is worth more, mm². */
  readonly bound: number
}

/** By how much the poses of a box blur a band: its middle along and across, and the reach of the turn. */
interface BandBlur {
  readonly alongMm: number
  readonly acrossMm: number
  readonly turnAlongMm: number
  readonly turnAcrossMm: number
}

function blurOf(box: PoseBox, band: TableBand): BandBlur {
  const frame = box.angleRad - box.frameRad
  const [cosF, sinF] = [Math.abs(Math.cos(frame)), Math.abs(Math.sin(frame))]
  const [sin, versine] = [Math.sin(box.halfAngleRad), 1 - Math.cos(box.halfAngleRad)]
  const alongMm = box.halfAlongMm * cosF + box.halfAcrossMm * sinF
  const acrossMm = box.halfAlongMm * sinF + box.halfAcrossMm * cosF
  const [p, q] = [Math.abs(band.alongMm), Math.abs(band.acrossMm)]
  return {
    // A turned pose moves along its own axes.
    alongMm: alongMm + acrossMm * sin,
    acrossMm: acrossMm + alongMm * sin,
    turnAlongMm: p * versine + q * sin,
    turnAcrossMm: q * versine + p * sin,
  }
}

/**
 * What no pose of a box can exceed.
 * @returns worth, mm²
 * Method: for each term the least of three bounds (greatest of three, where it counts against the pose): what the sides can
 * sweep in from the middle pose; all that is not open in the part that every pose covers; all wood in the part that any
 * pose covers. Rules: LAY-12.
 */
export function worthBound(terms: readonly WorthTerm[], box: PoseBox): number {
  let bound = 0
  for (const term of terms) bound += term.weight * areaLimit(term, box)
  return Math.min(box.bound, bound)
}

function areaLimit({ edges, band, weight, areaMm2 }: WorthTerm, box: PoseBox): number {
  const [a, b] = [band.halfLengthMm, band.halfWidthMm]
  const blur = blurOf(box, band)
  const sin = Math.sin(box.halfAngleRad)
  const [du, dv] = [blur.alongMm + blur.turnAlongMm, blur.acrossMm + blur.turnAcrossMm]
  const middle = bandBox(band, box)
  const sizedArea = (halfLengthMm: number, halfWidthMm: number): number =>
    halfLengthMm > 0 && halfWidthMm > 0 ? areaInBox(edges, { ...middle, halfLengthMm, halfWidthMm }) : 0
  const core: readonly [number, number] = [a - du - b * sin, b - dv - a * sin]
  const coreMm2 = Math.max(0, core[0]) * Math.max(0, core[1]) * 4
  const sweptMm2 = 2 * b * du + 2 * a * dv + (a * a + b * b) * box.halfAngleRad
  const atMiddle = areaInBox(edges, middle)
  const inCore = sizedArea(...core)
  const outer: readonly [number, number] = [a + du + b * sin, b + dv + a * sin]
  if (weight >= 0) {
    return Math.min(atMiddle + sweptMm2, 4 * a * b - coreMm2 + inCore, sizedArea(...outer), areaMm2)
  }
  return Math.max(atMiddle - sweptMm2, inCore, sizedArea(...outer) - 4 * outer[0] * outer[1] + 4 * a * b, 0)
}

/** How much each side of a box blurs what is sought; only their proportions matter. */
export interface BoxBlur {
  readonly along: number
  readonly across: number
  readonly turn: number
}

/** The two halves of a box, across the side that blurs most. */
export function poseHalves(box: PoseBox, { along, across, turn }: BoxBlur): readonly PoseBox[] {
  if (turn >= along && turn >= across) {
    const half = box.halfAngleRad / 2
    return [-half, half].map((d) => ({ ...box, angleRad: box.angleRad + d, halfAngleRad: half }))
  }
  return along >= across ? halvesAlong(box) : halvesAcross(box)
}

/** How far the sides of a table of some size move within a box. */
export const sideBlur = (box: PoseBox, lengthMm: number, widthMm: number): BoxBlur => ({
  along: box.halfAlongMm * widthMm,
  across: box.halfAcrossMm * lengthMm,
  turn: (box.halfAngleRad * (lengthMm * lengthMm + widthMm * widthMm)) / 2,
})

/**
 * What keeps a box's bound above its middle: wood or open places along the table's sides, whichever counts for less.
 * @param inWood lengths of the two ends and of the two long sides that lie in wood at the middle, mm
 */
export function worthBlur(
  box: PoseBox,
  { lengthMm, widthMm }: { readonly lengthMm: number; readonly widthMm: number },
  inWood: { readonly endsMm: number; readonly sidesMm: number },
): BoxBlur {
  const of = (endsMm: number, sidesMm: number): BoxBlur => ({
    along: endsMm * box.halfAlongMm,
    across: sidesMm * box.halfAcrossMm,
    turn: ((sidesMm * lengthMm + endsMm * widthMm) * box.halfAngleRad) / 4,
  })
  const wood = of(inWood.endsMm, inWood.sidesMm)
  const open = of(2 * widthMm - inWood.endsMm, 2 * lengthMm - inWood.sidesMm)
  const swept = of(widthMm, lengthMm)
  const sum = ({ along, across, turn }: BoxBlur): number => along + across + turn
  return mixedBlur(
    [wood, open, swept].reduce((least, next) => (sum(next) < sum(least) ? next : least)),
    swept,
  )
}

/** Of the size alone, so much is mixed in. */
const EVEN_SHARE = 0.1

/**
 * What is seen at a box's middle, with a little of what its size alone says: a side that seems to blur nothing is halved in
 * the end, too.
 */
export const mixedBlur = (seen: BoxBlur, even: BoxBlur): BoxBlur => ({
  along: seen.along + EVEN_SHARE * even.along,
  across: seen.across + EVEN_SHARE * even.across,
  turn: seen.turn + EVEN_SHARE * even.turn,
})

function halvesAlong(box: PoseBox): readonly PoseBox[] {
  const half = box.halfAlongMm / 2
  return [-half, half].map((d) => ({
    ...box,
    xMm: box.xMm + d * Math.cos(box.frameRad),
    yMm: box.yMm + d * Math.sin(box.frameRad),
    halfAlongMm: half,
  }))
}

function halvesAcross(box: PoseBox): readonly PoseBox[] {
  const half = box.halfAcrossMm / 2
  return [-half, half].map((d) => ({
    ...box,
    xMm: box.xMm - d * Math.sin(box.frameRad),
    yMm: box.yMm + d * Math.cos(box.frameRad),
    halfAcrossMm: half,
  }))
}
