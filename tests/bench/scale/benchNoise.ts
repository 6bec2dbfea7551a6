import { type SeededRandom, seededRandom } from '../../support/seededRandom'

export interface Noise {
  readonly random: SeededRandom
  /** Normal, mean 0. */
  readonly normal: (sd: number) => number
}

/** Method: Box and Muller's transform. */
export function noise(seed: number): Noise {
  const random = seededRandom(seed)
  return {
    random,
    normal: (sd) => sd * Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next()),
  }
}
