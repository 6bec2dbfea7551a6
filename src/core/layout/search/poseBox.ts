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

/** The two halves of a box, across the side that blurs the table most. */
export function poseHalves(box: PoseBox, lengthMm: number, widthMm: number): readonly PoseBox[] {
  const alongMm2 = box.halfAlongMm * widthMm
  const acrossMm2 = box.halfAcrossMm * lengthMm
  const turnMm2 = (box.halfAngleRad * (lengthMm * lengthMm + widthMm * widthMm)) / 2
  if (turnMm2 >= alongMm2 && turnMm2 >= acrossMm2) {
    const half = box.halfAngleRad / 2
    return [-half, half].map((d) => ({ ...box, angleRad: box.angleRad + d, halfAngleRad: half }))
  }
  return alongMm2 >= acrossMm2 ? halvesAlong(box) : halvesAcross(box)
}

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
