/**
 * A rigid placement from one mm frame into another: first mirrored (y → −y, "turned over"), then turned, then moved.
 * `angleRad` turns x towards y (y is down, so a positive angle looks like a right-hand turn on screen).
 */
export interface Isometry {
  readonly xMm: number
  readonly yMm: number
  readonly angleRad: number
  readonly turnedOver: boolean
}
