/** Reads an issue's values as words in the maker's units. */
export interface ValueWords {
  /** A length in mm, as "43 mm" or 1 11/16″. */
  readonly length: (name: string) => string
  /** An area in mm², in m² or ft². */
  readonly area: (name: string) => string
  /** A whole number. */
  readonly count: (name: string) => string
  /** An angle in radians, in degrees. */
  readonly angle: (name: string) => string
  /** A share as a percentage. */
  readonly percent: (name: string) => string
  /** A number with one decimal where it has any. */
  readonly decimal: (name: string) => string
  /** °C, as whole degrees. */
  readonly temperature: (name: string) => string
  /** kg. */
  readonly mass: (name: string) => string
  /** A force in newton, with what it would weigh. */
  readonly force: (name: string) => string
  /** A time in hours, as whole hours. */
  readonly hours: (name: string) => string
  /** An hour counted from any midnight, as the clock shows it. */
  readonly clock: (name: string) => string
  /** A name or a key, as it stands. */
  readonly text: (name: string) => string
}

export type IssueSentence = (say: ValueWords) => string
