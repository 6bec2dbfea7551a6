export { layBoard, removeBoard, setBoard } from './boardCommands'
export { addYardSlab, setCoverWishes, setSlabStock, takeTable } from './coverCommands'
export {
  addLineCut,
  layFootprint,
  liftFootprint,
  moveCutEarlier,
  removeLineCut,
  setKerf,
  setLineCut,
} from './cutCommands'
export { idsForPieces, keepFill } from './fillCommands'
export { addStraightLine, moveLinePoint, removeStraightLine } from './lineCommands'
export {
  moveMark,
  nextMarkName,
  placeMark,
  removeMark,
  renameMark,
  setMarkHeight,
  setTapedDistance,
} from './markCommands'
export {
  addLongerOption,
  setCosts,
  setForm,
  setRoom,
  setShop,
  setSlabWood,
  setStanding,
} from './buildCommands'
export {
  addOption,
  removeOption,
  renameOption,
  setLeastJoint,
  setResin,
  setTableOutline,
  setTableSide,
  setTableThickness,
} from './optionCommands'
export { addLaterPhoto, removeLaterPhoto, setPhotoFace, unplaceMark } from './photoCommands'
export {
  dropPiece,
  layPiece,
  movePlacement,
  pickPiece,
  placePiece,
  removePlacement,
  renamePiece,
} from './pieceCommands'
export { goBackTo, renamePlan, setPlanNote } from './planCommands'
export type { LookedAt, LookedAtMark } from './refineCommands'
export { keepClick, settleClicks, settleLine } from './refineCommands'
export { layRule, removeRule, setRule } from './ruleCommands'
export type { SlabFacts } from './slabCommands'
export {
  addPhotoSlab,
  addStationSlab,
  removeSlab,
  renameSlab,
  replacePhoto,
  setFlatness,
  setSlabFacts,
  setStations,
} from './slabCommands'
export {
  addTrace,
  deleteTracePoint,
  insertTracePoint,
  moveTracePoint,
  removeTrace,
  replaceTraceRing,
  setDatum,
  setOutline,
  setTraceMeaning,
} from './traceCommands'
