import type { PxPoint } from '../../geometry'
import {
  type PlaceGradient,
  placeGradients,
  type SlabScale,
  type ThetaGradient,
  thetaVariance,
} from '../../photo'
import { type Found, ready } from '../part'
import type { SlabAccuracy, SlabScaleResult, SlabShapeResult, VoidEdge } from '../planResult'
import type { Photo, Trace } from '../schema'
import { type EdgeStretch, edgeStretches } from './edgeStretches'
import { TRACE_SD_PX } from './traceSd'

export interface SlabAccuracyInput {
  readonly scale: SlabScaleResult
  readonly shape: SlabShapeResult
  readonly traces: readonly Trace[]
  readonly photo: Photo
}

/**
 * How sure the slab's figures are: standard deviations, first order, from Σ of the photo's scale and the traced edge.
 * Null parts: the datum carries no frame, or nothing is traced.
 * Source: Criminisi, Reid and Zisserman, A Plane Measuring Device, BMVC 1997. Rules: PLN-10.
 */
export function slabAccuracy(input: SlabAccuracyInput): Found<SlabAccuracy | null> {
  const { scale, shape, traces, photo } = input
  const place = placeGradients(scale.scale, scale.datum)
  const outline = traces.find(({ meaning, photoId }) => meaning.kind === 'outline' && photoId === photo.id)
  if (place === null || outline === undefined) return ready(null)
  const edge = edgeStretches(outline.ringPx, place)
  const voids = voidEdges(shape, traces, place)
  const whole = areaGradient(edge, scale.scale)
  const wood = voids.reduce((sum, hole) => minus(sum, areaGradient(hole.edge, scale.scale)), whole)
  const edgeNoise = traceVariance(edge)
  const woodNoise = voids.reduce((sum, hole) => sum + traceVariance(hole.edge), edgeNoise)
  const extent = extentSd(scale.scale, outline.ringPx.map(place), scale.pxPerMm)
  return ready({
    lengthSdMm: extent(0),
    widthSdMm: extent(1),
    grossAreaSdMm2: Math.sqrt(thetaVariance(scale.scale, whole) + edgeNoise),
    woodAreaSdMm2: Math.sqrt(thetaVariance(scale.scale, wood) + woodNoise),
    edge,
    voids,
  })
}

function voidEdges(
  shape: SlabShapeResult,
  traces: readonly Trace[],
  place: (px: PxPoint) => PlaceGradient,
): readonly VoidEdge[] {
  return shape.voids.flatMap(({ traceId, depthMm }) => {
    const trace = traces.find(({ id }) => id === traceId)
    return trace ? [{ depthMm, edge: edgeStretches(trace.ringPx, place) }] : []
  })
}

/** How the area inside changes with each of θ: ∮ shift ds. */
export function areaGradient(edge: readonly EdgeStretch[], { covariance }: SlabScale): ThetaGradient {
  return Array.from({ length: Math.sqrt(covariance.length) }, (_, k) =>
    edge.reduce((sum, { shift, lengthMm }) => sum + (shift[k] ?? 0) * lengthMm, 0),
  )
}

export const minus = (a: ThetaGradient, b: ThetaGradient): ThetaGradient => a.map((v, k) => v - (b[k] ?? 0))

/** Edge noise of an area, mm⁴: a straight run between two traced points moves as a whole. */
export const traceVariance = (edge: readonly EdgeStretch[]): number =>
  edge.reduce((sum, { traceSdMm, lengthMm, togetherMm }) => sum + traceSdMm ** 2 * lengthMm * togetherMm, 0)

/** Standard deviation of the extent along one axis of the slab frame: of its two outermost places. */
function extentSd(
  scale: SlabScale,
  places: readonly PlaceGradient[],
  pxPerMm: number,
): (axis: 0 | 1) => number {
  return (axis) => {
    const [first] = places
    if (first === undefined) return 0
    const least = places.reduce((a, b) => (b.at[axis] < a.at[axis] ? b : a), first)
    const most = places.reduce((a, b) => (b.at[axis] > a.at[axis] ? b : a), first)
    const of = (p: PlaceGradient): ThetaGradient => (axis === 0 ? p.alongX : p.alongY)
    const ends = 2 * (TRACE_SD_PX / pxPerMm) ** 2
    return Math.sqrt(thetaVariance(scale, minus(of(most), of(least))) + ends)
  }
}
