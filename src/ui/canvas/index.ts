export { LiveRegion } from '../a11y/LiveRegion'
export { canTakeBack, canvasActions, layOffcut, takeBack } from './canvasActions'
export { type CanvasPosition, type CanvasPositions, useCanvasPositions } from './screenPositions'
export { SlabCanvas } from './SlabCanvas'
