import type { Point } from './point'

/** A closed outline: open list (the first point is not repeated), at least three points. Sign rule in README.md. */
export type Ring<P extends Point = Point> = readonly P[]

/** One connected face: an outer ring of positive sign and holes of negative sign. */
export interface Region<P extends Point = Point> {
  readonly outer: Ring<P>
  readonly holes: readonly Ring<P>[]
}
