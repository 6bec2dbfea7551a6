/** Directions that a table's length may take, from one angle to a greater one. */
export interface AngleRange {
  readonly fromRad: number
  readonly toRad: number
}

/** Every direction of a table that looks the same turned end for end. */
export const HALF_TURN: AngleRange = { fromRad: -Math.PI / 2, toRad: Math.PI / 2 }

/** Every direction of a table that looks the same only as it is. */
export const FULL_TURN: AngleRange = { fromRad: -Math.PI, toRad: Math.PI }

/** A limit that the maker sets on the grain: along the table within so many degrees. */
export interface GrainLimit {
  /** Direction of the grain in the slab frame. */
  readonly directionRad: number
  readonly withinRad: number
}

/**
 * Directions that a table's length may take.
 * @param grain null: any
 * @param all   every direction that differs for the table
 */
export function allowedAngles(grain: GrainLimit | null, all: AngleRange): AngleRange {
  const span = all.toRad - all.fromRad
  if (grain === null || 2 * grain.withinRad >= span) return all
  return { fromRad: grain.directionRad - grain.withinRad, toRad: grain.directionRad + grain.withinRad }
}

/** Middles of so many equal parts of a range. */
export function partMiddles({ fromRad, toRad }: AngleRange, parts: number): readonly number[] {
  const step = (toRad - fromRad) / parts
  return Array.from({ length: parts }, (_, part) => fromRad + (part + 0.5) * step)
}
