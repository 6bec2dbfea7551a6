import type { TableSide, Verdict } from '../layout'
import { assertNever } from '../units'

/** The words of a verdict; values are ready as text, in the units shown. */
export interface VerdictWords {
  readonly covers: (values: { readonly spare: string }) => string
  readonly coversKept: () => string
  /** After one of the above. */
  readonly voidsInside: (values: { readonly voids: number; readonly area: string }) => string
  readonly needsFill: (values: {
    readonly share: string
    readonly side: string
    readonly depth: string
  }) => string
  readonly short: (values: {
    readonly side: string
    readonly depth: string
    readonly length: string
  }) => string
  readonly offSlab: () => string
}

/** How its figures are written. */
export interface VerdictFigures {
  readonly length: (mm: number) => string
  /** Of the margin, with its ± where that is known. */
  readonly margin: (mm: number) => string
  readonly area: (mm2: number) => string
  readonly share: (fraction: number) => string
  readonly side: (side: TableSide) => string
}

/** The verdict in words: the same for screen and paper, each in its own. Rules: SHT-2. */
export function verdictSentence(verdict: Verdict, words: VerdictWords, figures: VerdictFigures): string {
  const covers = (spareMm: number | null): string =>
    spareMm === null ? words.coversKept() : words.covers({ spare: figures.margin(spareMm) })
  switch (verdict.kind) {
    case 'covers':
      return covers(verdict.spareMm)
    case 'covers-with-voids': {
      const voids = words.voidsInside({ voids: verdict.voids, area: figures.area(verdict.voidAreaMm2) })
      return `${covers(verdict.spareMm)}${voids}`
    }
    case 'needs-fill':
      return words.needsFill({
        share: figures.share(verdict.filledShare),
        side: figures.side(verdict.worstSide),
        depth: figures.margin(verdict.depthMm),
      })
    case 'short':
      return words.short({
        side: figures.side(verdict.side),
        depth: figures.margin(verdict.depthMm),
        length: figures.length(verdict.lengthMm),
      })
    case 'off-slab':
      return words.offSlab()
    default:
      return assertNever(verdict)
  }
}
