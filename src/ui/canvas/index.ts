export { announce } from '../a11y/announce'
export { LiveRegion } from '../a11y/LiveRegion'
export {
  canTakeBack,
  canvasActions,
  closeTrace,
  layOffcut,
  takeBack,
  turnOverSelected,
} from './canvasActions'
export { type CanvasPosition, type CanvasPositions, useCanvasPositions } from './screenPositions'
export { SlabCanvas } from './SlabCanvas'
