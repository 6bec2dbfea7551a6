export type { Camera, Lens, Surface } from './camera'
export { distortPx, planePointFromPx, pxFromPlanePoint, surfaceHeightMm, undistortPx } from './camera'
export type { Homography, PointPair } from './homography'
export {
  applyHomography,
  collinearTriple,
  composeHomographies,
  homographyFromPoints,
  invertHomography,
} from './homography'
export type { MarkDistance, MarkLayout, MarkLayoutInput } from './markLayout'
export { markPositionsFromDistances } from './markLayout'
export type {
  BoardReference,
  Flatness,
  ScaleInput,
  ScaleProblem,
  ScaleProblemCode,
  TapedDistance,
} from './scaleInput'
export { DEFAULT_OUT_OF_FLAT_MM } from './scaleInput'
export type { SlabScaleResult } from './slabScale'
export type { SlabScale } from './scaleOfPhoto'
export { planePointOf, slabScaleFromMarks } from './slabScale'
export { DEFAULT_CLICK_SD_PX } from './scaleNetwork'
export type { SlabFrame } from './slabFrame'
export {
  planePointFromSlab,
  pxFromSlabPoint,
  slabFrame,
  slabPointFromPlane,
  slabPointFromPx,
} from './slabFrame'
export type { PhotoRegistration, SharedMark } from './registerPhoto'
export { laterSlabFrame, registerPhoto } from './registerPhoto'
export type { ImageFileFacts, ImageMediaType } from './inspectImageFile'
export { inspectImageFile, MOST_MEGAPIXELS } from './inspectImageFile'
export { withoutLocation } from './withoutLocation'
export type { RectifyingTransform, RgbaImage, SlabWindow } from './rectify'
export { rectifyingTransform, rectifyInto, undistortedFromSlab } from './rectify'
export type { PixelArea, RectifyingTile } from './rectifyingTiles'
export { rectifyingTiles } from './rectifyingTiles'
export type { Measured, ThetaGradient } from './uncertainty'
export { measuredAreaMm2, measuredLengthMm, thetaGradient, thetaVariance } from './uncertainty'
export { seededNormals, thetaDraws } from './seededDraws'
export type { PixelWindow } from './pixelWindow'
export { windowAround, wholePhoto } from './pixelWindow'
export type { RefinedClick } from './refined'
export { THUMB_SD_PX } from './refined'
export { refineRoundMark } from './refineRound'
export { refineCross } from './refineCross'
export type { RefinedBoard } from './refineBoard'
export { refineBoard } from './refineBoard'
export { refineRule } from './refineRule'
export type { RefinedLine } from './refineLine'
export { refineLine } from './refineLine'
export type { ClickedThing, PixelBox } from './refineClicks'
export { boxRound, clicksOf, refineClicks } from './refineClicks'
export type { MeasuredPlace } from './placeUncertainty'
export { placeMeasurer } from './placeUncertainty'
export type { Help } from './whatWouldHelp'
export { whatWouldHelp } from './whatWouldHelp'
export type { PhotoSharpness } from './photoSharpness'
export { photoSharpness } from './photoSharpness'
export type { PlaceGradient } from './placeGradients'
export { placeGradients } from './placeGradients'
