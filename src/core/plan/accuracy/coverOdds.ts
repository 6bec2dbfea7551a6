/** How likely the slab covers, as a word of everyday speech. */
export type CoverOdds =
  | 'almost-surely'
  | 'very-likely'
  | 'likely'
  | 'as-likely-as-not'
  | 'not-likely'
  | 'hardly'
  | 'almost-surely-not'

/**
 * Least chance for each word. Source: limits of the likelihood scale in Mastrandrea et al., Guidance Note for Lead Authors
 * of the IPCC Fifth Assessment Report on Consistent Treatment of Uncertainties, 2010, table 1 (from memory).
 */
const LEAST_CHANCES: readonly (readonly [number, CoverOdds])[] = [
  [0.99, 'almost-surely'],
  [0.9, 'very-likely'],
  [0.66, 'likely'],
  [0.33, 'as-likely-as-not'],
  [0.1, 'not-likely'],
  [0.01, 'hardly'],
]

/** @param chance 0 to 1. Rules: PLN-11. */
export const coverOdds = (chance: number): CoverOdds =>
  LEAST_CHANCES.find(([least]) => chance >= least)?.[1] ?? 'almost-surely-not'
