import type { Point } from './point'

/**
 * A point in the same plane as the points it was computed from. Internal to this folder.
 * The cast is sound because every caller computes x and y from points of P only, so the plane cannot change.
 */
export const brandedPoint = <P extends Point>(x: number, y: number): P => [x, y] as unknown as P
