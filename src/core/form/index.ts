export type { SheetSize, StockSheet } from './sheetStock'
export { SHEET_SIZES } from './sheetStock'
export type { CutDiagram, PlacedPart, SheetCut, SheetRect } from './cutDiagram'
export type { CuttingPlan, CuttingTask, SheetPart, SheetUse } from './cuttingPlan'
export type { CuttingState, SheetCutting } from './sheetCutting'
export { sheetCutting } from './sheetCutting'
export type { BasePanels } from './baseJoints'
export { wetAcrossMm } from './baseJoints'
export type { FormPart, FormPartKind, FormPlan, FormRequest, SideLoad, VoidToDam } from './formParts'
export {
  formParts,
  USUAL_BACKING_MM,
  USUAL_BASE_BEYOND_MM,
  USUAL_SCREW_EVERY_MM,
  USUAL_SIDE_ABOVE_MM,
  voidDams,
} from './formParts'
export type { CarrierShare } from './lifting'
export { carrierShares, LOAD_CONSTANT_KG } from './lifting'
export type { MassCentre, WeighedPart } from './massCentre'
export { massCentre } from './massCentre'
export type { BaseKind, BasePlace, Seats, Stance, TipEdge } from './stance'
export { feetOf, LEANING_KG, PLACE_WIDTH_MM, seatsRound, stance } from './stance'
export type { CarriedTop, Door, Lift, Turn } from './passage'
export {
  longestRoundTurnMm,
  passesDoor,
  passesLift,
  passesTurn,
  rectangleFits,
  USUAL_ROOM_MM,
} from './passage'
