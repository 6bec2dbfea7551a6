import { boardFeetFromMm3, InvariantError, mmToFeet, mmToInches } from '../units'

/** How a yard measures a live-edge slab. No public standard says which: the seller's rule is asked for. */
export type SlabRule =
  /** Length × mean width × thickness. */
  | 'mean-width'
  /** Longest × widest × thickness: air and bark are paid for. */
  | 'longest-widest'

export interface SlabSize {
  readonly lengthMm: number
  readonly meanWidthMm: number
  readonly widestMm: number
  readonly thicknessMm: number
}

/** How hardwood is tallied: exactly, or by surface measure to whole feet (a half goes up). */
export type Tally = 'exact' | 'surface-feet'

export interface BoardMeasure {
  readonly volumeMm3: number
  readonly boardFeet: number
  readonly cubicMetres: number
}

/**
 * Volume of a slab as the yard counts it.
 * @throws InvariantError when a size is not above zero
 * Method: exact: 144 in³ to the board foot (units). Surface feet: width in inches × whole feet of length / 12, to the
 * whole foot, × thickness in inches, at least one (hardwood yards; NHLA rules as they are restated). A half is raised
 * every time: the rule to raise and lower in turn needs a pile of boards.
 * Rules: WOOD-9.  Check values: wood.json "board-…".
 */
export function boardMeasure(size: SlabSize, rule: SlabRule, tally: Tally): BoardMeasure {
  const { lengthMm, thicknessMm } = size
  const widthMm = rule === 'mean-width' ? size.meanWidthMm : size.widestMm
  if (!(lengthMm > 0 && widthMm > 0 && thicknessMm > 0))
    throw new InvariantError('a slab has a size', { lengthMm, widthMm, thicknessMm })
  const volumeMm3 = lengthMm * widthMm * thicknessMm
  return {
    volumeMm3,
    boardFeet: tally === 'exact' ? boardFeetFromMm3(volumeMm3) : talliedBoardFeet(size, widthMm),
    cubicMetres: volumeMm3 / 1e9,
  }
}

/** Absorbs the binary crumbs of 25.4: 3048 mm is ten feet, not nine. */
const CRUMB = 1e-9

function talliedBoardFeet({ lengthMm, thicknessMm }: SlabSize, widthMm: number): number {
  const wholeFeet = Math.floor(mmToFeet(lengthMm) + CRUMB)
  const surfaceFeet = Math.floor((mmToInches(widthMm) * wholeFeet) / 12 + 0.5 + CRUMB)
  return surfaceFeet * Math.max(1, mmToInches(thicknessMm))
}
