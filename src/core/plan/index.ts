export type { Cut, Option, Photo, Plan, Slab, Table, TableSideName, Trace } from './schema'
export { GREATEST_LENGTH_MM, PLAN_VERSION } from './planLimits'
export { planSchema } from './schema'
export {
  STARTING_VALUES,
  blankOption,
  blankPhotoSlab,
  blankPlan,
  blankStationSlab,
  plainFootprintCuts,
} from './blankPlan'
export { defaultNames } from './text/en/names'
export { en } from './text/en'
export { textsAtOnce } from './text/textsAtOnce'
export { coverTexts } from './text/en/ui/cover'
export { fillTexts } from './text/en/ui/fill'
export { helpTexts } from './text/en/ui/help'
export { paperTexts } from './text/en/ui/paper'
export { pourTexts } from './text/en/ui/pour'
export { slabTexts } from './text/en/ui/slab'
export { tableTexts } from './text/en/ui/table'
export type { Catalogue } from './text/en'
export { computePlan } from './computePlan'
export { answerPour, ROOMS_SHOWN_C } from './pour/answerPour'
export type { BucketLeft, PourResult } from './pour/answerPour'
export { answerBuild } from './build/answerBuild'
export type {
  BuildResult,
  FlatteningFigures,
  FormFigures,
  PieceMovement,
  PriceFigures,
  ShoppingItem,
  StandingFigures,
  WeightFigures,
  WoodFigures,
} from './build/buildResult'
export type { BuildTask } from './build/buildTask'
export { blankCosts, blankForm, blankRoom, blankShop, blankStanding, blankWood } from './blankBuild'
export { buildWords } from './text/en/buildWords'
export { formTexts } from './text/en/ui/form'
export { priceTexts } from './text/en/ui/price'
export { pourCalendar } from './pour/pourCalendar'
export type { PourTask } from './pour/pourTask'
export { USUAL_WOOD_KG_PER_M3 } from './pour/pourTask'
export type { SlowAnswers } from './pour/slowAnswers'
export { ANSWERS_ON_THE_SPOT, NO_ANSWERS } from './pour/slowAnswers'
export { dayText } from './dayText'
export { roundedUp } from './roundedUp'
export { civilDay, clockText, hourText } from './hourText'
export { parseHour } from './parseHour'
export { verdictSentence } from './verdictSentence'
export { describeIssue } from './describeIssue'
export { describeProblem } from './describeProblem'
export type { Issue, IssueCode, PlanPath } from './issue'
export { ISSUE_CODES, isBuildCode, isPourCode } from './issue'
export type { Part } from './part'
export type {
  MarkPosition,
  OptionAccuracy,
  OptionResult,
  PlanResult,
  SlabAccuracy,
  SlabResult,
  SlabScaleResult,
  SlabShapeResult,
  SlabVoid,
  TapedDistanceCheck,
} from './planResult'
export type {
  CoverageResult,
  FootprintResult,
  PiecesResult,
  PlacedPiece,
  ResinResult,
  SetOutCut,
  SlabPiece,
} from './tableResult'
export type { LostPart, ParsedPlan } from './parsePlan'
export { parsePlan } from './parsePlan'
export { readPlanText } from './readPlanText'
export { buildCutSheets } from './sheets/buildCutSheets'
export type { TemplateSheet } from './sheets/templateSheets'
export { templateSheets } from './sheets/templateSheets'
export type { SheetKind } from './sheets/sheetKinds'
export { BENCH_SHEETS, SHEET_KINDS } from './sheets/sheetKinds'
export type { CutSheetRequest } from './sheets/sheetInput'
export type { DrawingFrame, TakeAwayInput, TakeAwayRequest } from './takeAway/planDrawing'
export { gatherTakeAway, planDrawing } from './takeAway/planDrawing'
export { cutsCsv, partsCsv } from './takeAway/listsCsv'
export { resultJson } from './takeAway/resultJson'
export type { SheetText } from './text/en/sheet'
export { sheetText } from './text/en/sheet'
export type { CoverOdds } from './accuracy/coverOdds'
export { coverOdds } from './accuracy/coverOdds'
export type { ScaleAdvice } from './accuracy/scaleAdvice'
export { scaleAdvice } from './accuracy/scaleAdvice'
export type { WeakCell, WeakPlaces } from './accuracy/weakPlaces'
export { WEAK_BANDS_MM, weakPlaces } from './accuracy/weakPlaces'
export { fillTaskOf, type FillTaskInput } from './fill/fillTaskOf'
export { withFillProposal } from './fill/withFillProposal'
export type { SlabOrder } from './cover/compareSlabs'
export { bestSlab, cheaperSlabs, compareSlabs, doesServe, isWet, SLAB_ORDERS } from './cover/compareSlabs'
export type { CoverSubject } from './cover/coverTasks'
export {
  bestPlaceTask,
  frontierTask,
  growthTask,
  keptSides,
  keptTask,
  largestTask,
  marginTask,
  sizeOf,
  twoSlabsTask,
} from './cover/coverTasks'
export { dryingOf, poseBeforeDrying } from './cover/drying'
export { finishedThickness } from './cover/finishedThickness'
export type { SlabFindings, SlabRow, SlabVerdict } from './cover/slabRow'
export { withPourHours } from './cover/pourHours'
export { slabRow } from './cover/slabRow'
