/** A place in some plane: x to the right, y DOWN (as in a canvas or a photo). Units are the caller's. */
export type Point = readonly [x: number, y: number]

declare const space: unique symbol

/** Photo pixels of the upright full-resolution image; origin at the top-left corner of the top-left pixel. */
export type PxPoint = readonly [xPx: number, yPx: number] & { readonly [space]: 'px' }
/** Millimetres on the slab's face; origin and x axis are the datum's two anchors. */
export type SlabPoint = readonly [xMm: number, yMm: number] & { readonly [space]: 'slab' }
/** Millimetres in the table's frame; origin at the finished table's corner, x along its length. */
export type TablePoint = readonly [xMm: number, yMm: number] & { readonly [space]: 'table' }

// The three makers are the only places (besides the schema) that may brand a point.
export const pxPoint = (xPx: number, yPx: number): PxPoint => [xPx, yPx] as unknown as PxPoint
export const slabPoint = (xMm: number, yMm: number): SlabPoint => [xMm, yMm] as unknown as SlabPoint
export const tablePoint = (xMm: number, yMm: number): TablePoint => [xMm, yMm] as unknown as TablePoint
