import { InvariantError } from '../units'

/** A stiff flat thing that is carried in. */
export interface CarriedTop {
  readonly lengthMm: number
  readonly widthMm: number
  readonly thicknessMm: number
}

export interface Door {
  readonly widthMm: number
  readonly heightMm: number
}

export interface Lift {
  readonly door: Door
  readonly widthMm: number
  readonly depthMm: number
  readonly heightMm: number
}

/** A right-angled turn of stairs or a corridor. */
export interface Turn {
  readonly beforeMm: number
  readonly afterMm: number
  readonly headroomMm: number
}

/** Hands, blankets and a corner that is not square. Common practice, no source. */
export const USUAL_ROOM_MM = 20

/**
 * Whether a rectangle lies in another, turned as it may.
 * Method: Carver's theorem (Am. Math. Monthly 64, 1957; from memory): p × q, p ≥ q, lies in a × b, a ≥ b, if p ≤ a and
 * q ≤ b, or p > a, q ≤ b and b ≥ (2pqa + (p² − q²)·√(p² + q² − a²))/(p² + q²).
 * Rules: HAND-5.
 */
export function rectangleFits(size: readonly [number, number], room: readonly [number, number]): boolean {
  const [p, q] = [Math.max(...size), Math.min(...size)]
  const [a, b] = [Math.max(...room), Math.min(...room)]
  if (p <= a) return q <= b
  if (q > b) return false
  const rootOf = p * p + q * q - a * a
  return b >= (2 * p * q * a + (p * p - q * q) * Math.sqrt(rootOf)) / (p * p + q * q)
}

const STEPS = 2000

/** Greatest length of a thing of some thickness that lies in a rectangle on the floor, by halving. */
function longestOnFloorMm(thicknessMm: number, room: readonly [number, number]): number {
  if (!rectangleFits([thicknessMm, thicknessMm], room)) return 0
  let [fits, fails] = [thicknessMm, Math.hypot(...room) + 1]
  for (let step = 0; step < 60; step += 1) {
    const middle = (fits + fails) / 2
    if (rectangleFits([middle, thicknessMm], room)) fits = middle
    else fails = middle
  }
  return fits
}

/** Whether a top goes through a door, its end first: W × T through the opening, turned as it may. Rules: HAND-5. */
export const passesDoor = ({ lengthMm, widthMm, thicknessMm }: CarriedTop, door: Door): boolean =>
  rectangleFits([Math.min(lengthMm, widthMm), thicknessMm], [door.widthMm, door.heightMm])

/**
 * Whether a top goes into a lift: through its door, then on edge along the longest line of the floor, tilted as the
 * height allows. A way in that is found is one; another may exist where none is found.
 * Rules: HAND-5.
 */
export function passesLift(top: CarriedTop, { door, widthMm, depthMm, heightMm }: Lift): boolean {
  const floorMm = longestOnFloorMm(top.thicknessMm, [widthMm, depthMm])
  return passesDoor(top, door) && rectangleFits([top.lengthMm, top.widthMm], [floorMm, heightMm])
}

/**
 * Longest thing of some thickness that is carried upright round a right-angled turn.
 * @returns mm; 0 where it is too thick for one of the ways
 * Method: least over all angles of (a·cos θ + b·sin θ − T)/(sin θ·cos θ); without thickness (a^⅔ + b^⅔)^1.5.
 * Rules: HAND-6.
 */
export function longestRoundTurnMm(beforeMm: number, afterMm: number, thicknessMm: number): number {
  if (!(beforeMm > 0 && afterMm > 0 && thicknessMm >= 0))
    throw new InvariantError('ways have a width', { beforeMm, afterMm, thicknessMm })
  if (thicknessMm >= Math.min(beforeMm, afterMm)) return 0
  let longest = Infinity
  for (let step = 1; step < STEPS; step += 1) {
    const angle = (Math.PI / 2) * (step / STEPS)
    const [sine, cosine] = [Math.sin(angle), Math.cos(angle)]
    longest = Math.min(longest, (beforeMm * cosine + afterMm * sine - thicknessMm) / (sine * cosine))
  }
  return longest
}

/**
 * Whether a top on its long edge goes round a turn, its front end raised as far as the headroom allows.
 * Method: a tilt φ with L·sin φ + W·cos φ ≤ headroom makes it L·cos φ + W·sin φ long on the floor; the shortest counts.
 * Rules: HAND-6.
 */
export function passesTurn(
  { lengthMm, widthMm, thicknessMm }: CarriedTop,
  { beforeMm, afterMm, headroomMm }: Turn,
): boolean {
  let shortest = Infinity
  for (let step = 0; step <= STEPS; step += 1) {
    const angle = (Math.PI / 2) * (step / STEPS)
    const [sine, cosine] = [Math.sin(angle), Math.cos(angle)]
    if (lengthMm * sine + widthMm * cosine > headroomMm) continue
    shortest = Math.min(shortest, lengthMm * cosine + widthMm * sine)
  }
  return shortest <= longestRoundTurnMm(beforeMm, afterMm, thicknessMm)
}
