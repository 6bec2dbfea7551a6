import { InvariantError } from '../units'

const MOST_DOUBLINGS = 12

/**
 * Volume of a solid from its horizontal sections.
 * @param areaMm2At  area of the section at a height
 * @param relTolerance  the number of heights is doubled until the volume changes by less
 * @returns mm³
 * @throws InvariantError when the heights are not in order or an area is negative or not finite
 * Method: composite Simpson's rule; exact for prismoids.
 * Rules: RES-13.
 */
export function solidVolumeMm3(
  areaMm2At: (heightMm: number) => number,
  fromMm: number,
  toMm: number,
  relTolerance = 1e-3,
): number {
  if (!(toMm >= fromMm)) throw new InvariantError('heights must be in order', { fromMm, toMm })
  const area = (heightMm: number): number => {
    const found = areaMm2At(heightMm)
    if (!(found >= 0 && Number.isFinite(found)))
      throw new InvariantError('a section must have an area', { heightMm, areaMm2: found })
    return found
  }
  const ends = area(fromMm) + area(toMm)
  let panels = 2
  let even = 0
  let odd = area((fromMm + toMm) / 2)
  let volume = ((toMm - fromMm) / 6) * (ends + 4 * odd)
  for (let doubling = 0; doubling < MOST_DOUBLINGS; doubling += 1) {
    panels *= 2
    even += odd
    const stepMm = (toMm - fromMm) / panels
    odd = 0
    for (let index = 1; index < panels; index += 2) odd += area(fromMm + index * stepMm)
    const next = (stepMm / 3) * (ends + 2 * even + 4 * odd)
    const change = Math.abs(next - volume)
    volume = next
    if (change <= relTolerance * Math.abs(next)) break
  }
  return volume
}
