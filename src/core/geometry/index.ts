export type { Point, PxPoint, SlabPoint, TablePoint } from './point'
export { pxPoint, slabPoint, tablePoint } from './point'
export type { Region, Ring } from './region'
export type { Isometry } from './isometry'
export {
  ARC_TOLERANCE_MM,
  ARC_TOLERANCE_PER_OFFSET,
  CLIP_GRID_MM,
  CLIP_SIMPLIFY_MM,
  CLIP_VERTEX_LIMIT,
  JOIN_TOLERANCE_MM,
  MITRE_LIMIT,
  SLIVER_AREA_MM2,
} from './tolerance'
export {
  addPoints,
  crossOf,
  dotOf,
  midpoint,
  pointDistanceMm,
  scalePoint,
  subtractPoints,
} from './pointArithmetic'
export { ringAreaMm2 } from './ringArea'
export { ringPerimeterMm } from './ringPerimeter'
export type { Moments } from './ringMoments'
export { ringCentroid, ringMoments } from './ringMoments'
export { reverseRing } from './reverseRing'
export { spanPoint } from './spanPoint'
export type { Bounds } from './bounds'
export { regionBounds, regionsBounds, ringBounds } from './bounds'
export { isPointInRegion, isPointInRing } from './isPointInRing'
export { regionAreaMm2, regionsAreaMm2 } from './regionArea'
export type { OffsetJoin } from './clippingKernel'
export { intersectRegions, offsetRegions, regionsFromRings, subtractRegions, uniteRegions } from './booleans'
export { sideOfLine, signedDistanceToLineMm } from './sideOfLine'
export { segmentCrossing } from './segmentCrossing'
export { pointToRingDistanceMm, pointToSegmentDistanceMm } from './pointDistances'
export type { SelfCrossing } from './ringSelfCrossing'
export { ringSelfCrossing } from './ringSelfCrossing'
export { normaliseOutline } from './normaliseOutline'
export { convexHull } from './convexHull'
export type { TurnedRectangle } from './smallestRectangle'
export { smallestRectangle } from './smallestRectangle'
export { regionsDistanceMm } from './regionsDistance'
export { interiorPoint } from './interiorPoint'
export { simplifyRing } from './simplifyRing'
export {
  IDENTITY_ISOMETRY,
  applyIsometry,
  applyIsometryToRegion,
  applyIsometryToRing,
  composeIsometries,
  invertIsometry,
} from './isometries'
