export { blankRing } from './blankRing'
export {
  type Coverage,
  type CoverageInput,
  coverageOf,
  gapAreaMm2,
  type LaidPiece,
  type Overlap,
} from './coverage'
export { CHORD_ERROR_MM, finishedRing, type TableOutline } from './finishedRing'
export { type FormSide, formSides, woodEdgeMm } from './formSides'
export { sidesReached } from './sidesReached'
export { type GapWidths, gapWidthsMm, NARROW_SHARE } from './gapWidths'
export { type Gap, gapsOf, type TableVoid } from './gaps'
export { type KeptEdge } from './keptEdges'
export { type SideGap } from './sideGaps'
export { startingPlacement, type WoodAbout } from './startingPlacement'
export { startingPose } from './startingPose'
export { type SideChoices, type SideFinish, TABLE_SIDES, type TableSide } from './tableSides'
export { type Verdict, verdictOf } from './verdict'
export { FULL_TURN, type GrainLimit, HALF_TURN } from './search/angleRange'
export { areaInBox, areaKernel, type AreaGradient, type TurnedBox } from './search/areaKernel'
export { type BestPose, bestPose, type BestPoseTask } from './search/bestPose'
export { boatRing } from './search/boatRing'
export { FIT_TOLERANCE_MM } from './search/clearMeter'
export {
  COVER_TOLERANCES,
  type CoverFinding,
  type CoverFindings,
  type CoverKind,
  coverProgress,
  coverSearch,
  type CoverTask,
  type WoodRegions,
} from './search/coverTask'
export { doesItFit, type FitAnswer, fitAnswer, fitSearch, type FitTask } from './search/doesItFit'
export {
  frontier,
  type FrontierPoint,
  type FrontierTask,
  frontierWidths,
  spanningWidths,
} from './search/frontier'
export type { Growth } from './search/growingShape'
export { keptTable } from './search/keptTable'
export type { KeptTable, KeptTableTask } from './search/keptTableTask'
export { type LargestShape, largestShape, type LargestShapeTask } from './search/largestShape'
export { type LargestTable, largestTable, type LargestTableTask } from './search/largestTable'
export { NO_WISHES, pointZone, type PoseWishes, type WishZone } from './search/poseWishes'
export { type Search, type SearchState, type TracePoint } from './search/searchState'
export { searchWood, type SearchWood } from './search/searchWood'
export {
  type SlabCandidate,
  type SlabStrip,
  twoSlabs,
  type TwoSlabPair,
  type TwoSlabTask,
} from './search/twoSlabs'
export {
  litresSaved,
  type FillFinding,
  type FillPiece,
  type FillProposal,
  type FillVirtue,
} from './fill/fillProposal'
export { fillSearch } from './fill/fillSearch'
export {
  FILL_LIMITS,
  type FillLimits,
  type FillOffcut,
  fillRoom,
  type FillRoom,
  type FillTask,
} from './fill/fillTask'
