/** The angle between two lines, whichever way they are walked: 0 to a quarter turn. Radians. */
export const acuteAngle = (angleRad: number): number => Math.abs(Math.atan(Math.tan(angleRad)))
