import { crossOf, type PxPoint, slabPoint, type SlabPoint } from '../../geometry'
import type { PlaceGradient, ThetaGradient } from '../../photo'
import { TRACE_SD_PX } from './traceSd'

/** A short stretch of a traced edge, and what its shift does. */
export interface EdgeStretch {
  readonly middle: SlabPoint
  readonly lengthMm: number
  /** Unit vector out of the ring. */
  readonly outwards: readonly [number, number]
  /** How its middle moves along x and y with each of θ, mm. */
  readonly moves: readonly [x: ThetaGradient, y: ThetaGradient]
  /** How far the stretch moves outwards with each of θ, mm. */
  readonly shift: ThetaGradient
  /** Standard deviation of the trace across itself, mm, and along how much of the edge one error of it reaches. */
  readonly traceSdMm: number
  readonly togetherMm: number
}

/** Longer straight runs are taken in steps, so that each is either in the table or out of it, mm. */
const STEP_MM = 40
/**
 * The edge of a trace as stretches.
 * @param ringPx the trace; @param place where its pixels lie and how they shift
 */
export function edgeStretches(
  ringPx: readonly PxPoint[],
  place: (px: PxPoint) => PlaceGradient,
): readonly EdgeStretch[] {
  const places = ringPx.map(place)
  const after = (i: number): PlaceGradient | undefined => places[(i + 1) % places.length]
  const twiceArea = places.reduce((sum, p, i) => sum + crossOf(p.at, after(i)?.at ?? p.at), 0)
  const sign = twiceArea < 0 ? -1 : 1
  return places.flatMap((from, i) => {
    const to = after(i) ?? from
    const [px, qx] = [ringPx[i], ringPx[(i + 1) % ringPx.length]]
    return px && qx ? stretchesBetween(from, to, pixelsBetween(px, qx), sign) : []
  })
}

const pixelsBetween = (p: PxPoint, q: PxPoint): number => Math.hypot(p[0] - q[0], p[1] - q[1])

function stretchesBetween(
  from: PlaceGradient,
  to: PlaceGradient,
  pixels: number,
  sign: number,
): readonly EdgeStretch[] {
  const [dx, dy] = [to.at[0] - from.at[0], to.at[1] - from.at[1]]
  const wholeMm = Math.hypot(dx, dy)
  if (wholeMm === 0 || pixels === 0) return []
  const outwards = [(sign * dy) / wholeMm, (-sign * dx) / wholeMm] as const
  const steps = Math.max(1, Math.ceil(wholeMm / STEP_MM))
  const mix = (a: number, b: number, share: number): number => a + share * (b - a)
  return Array.from({ length: steps }, (_, n) => {
    const share = (n + 0.5) / steps
    const alongX = from.alongX.map((x, k) => mix(x, to.alongX[k] ?? 0, share))
    const alongY = from.alongY.map((y, k) => mix(y, to.alongY[k] ?? 0, share))
    return {
      middle: between(from.at, to.at, share),
      moves: [alongX, alongY],
      lengthMm: wholeMm / steps,
      outwards,
      shift: alongX.map((x, k) => outwards[0] * x + outwards[1] * (alongY[k] ?? 0)),
      traceSdMm: (TRACE_SD_PX * wholeMm) / pixels,
      togetherMm: wholeMm,
    }
  })
}

const between = (a: SlabPoint, b: SlabPoint, share: number): SlabPoint =>
  slabPoint(a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))
