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
export { type FormSide, formSides, sidesReached, woodEdgeMm } from './formSides'
export { type GapWidths, gapWidthsMm, NARROW_SHARE } from './gapWidths'
export { type Gap, gapsOf, type TableVoid } from './gaps'
export { type KeptEdge } from './keptEdges'
export { type SideGap } from './sideGaps'
export { startingPlacement } from './startingPlacement'
export { startingPose } from './startingPose'
export { type SideChoices, type SideFinish, TABLE_SIDES, type TableSide } from './tableSides'
export { type Verdict, verdictOf } from './verdict'
