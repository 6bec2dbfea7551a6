import * as z from 'zod/mini'
import type { PaperName } from '../core/drawing'
import { BENCH_SHEETS, GREATEST_LENGTH_MM, SHEET_KINDS, type SheetKind } from '../core/plan'
import type { LengthDisplay } from '../core/units'

/** A rectangle of known size that is laid on slabs. */
export interface BoardSize {
  readonly lengthMm: number
  readonly widthMm: number
  readonly thicknessMm: number
}

/** A rule, folding rule or batten with marked ends. */
export interface RuleSize {
  readonly lengthMm: number
  readonly thicknessMm: number
}

export interface Preferences {
  readonly display: LengthDisplay
  /** Null: the usual one where lengths are shown so, see `usualPaper`. */
  readonly paper: PaperName | null
  /** Which sheets of the bench set are printed. */
  readonly sheets: readonly SheetKind[]
  /** High contrast for work in the sun. */
  readonly bright: boolean
  /** The maker's own references, kept once by this browser and offered to every slab; newest first. */
  readonly ownBoards: readonly BoardSize[]
  readonly ownRules: readonly RuleSize[]
}

const KEY = 'waneline-preferences'

const lengthMm = z.number().check(z.positive(), z.maximum(GREATEST_LENGTH_MM))

const thicknessMm = z.number().check(z.nonnegative())

const board = z.object({ lengthMm, widthMm: lengthMm, thicknessMm })

const rule = z.object({ lengthMm, thicknessMm })

const schema = z.object({
  display: z.discriminatedUnion('system', [
    z.object({ system: z.literal('mm') }),
    z.object({ system: z.literal('inch'), fraction: z.union([z.literal(8), z.literal(16), z.literal(32)]) }),
  ]),
  paper: z.nullable(z.enum(['a4', 'a3', 'letter', 'tabloid'])),
  sheets: z._default(z.array(z.enum(SHEET_KINDS)), [...BENCH_SHEETS]),
  bright: z.boolean(),
  ownBoards: z._default(z.array(board), []),
  ownRules: z._default(z.array(rule), []),
})

const plain = { paper: null, sheets: BENCH_SHEETS, bright: false, ownBoards: [], ownRules: [] } as const

const ownRegion = (): string => globalThis.navigator?.language ?? ''

/** Makers who work in inches print on Letter, those who work in mm on A4; Canada has mm and Letter. */
export const usualPaper = ({ system }: LengthDisplay): PaperName =>
  system === 'inch' || ownRegion().endsWith('-CA') ? 'letter' : 'a4'

/** Places that measure by the inch start so; all others with mm. */
function startingPreferences(): Preferences {
  const isInchCountry = /^(en|es)-(US|LR)$|^my|-MM$/.test(ownRegion())
  return { display: isInchCountry ? { system: 'inch', fraction: 16 } : { system: 'mm' }, ...plain }
}

/** A browser that keeps nothing for us (private window, storage switched off) throws; we then start as if new. */
function storedText(): string | null {
  try {
    return globalThis.localStorage?.getItem(KEY) ?? null
  } catch {
    return null
  }
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

export function readPreferences(): Preferences {
  const text = storedText()
  const read = text === null ? null : schema.safeParse(parsed(text))
  return read?.success === true ? read.data : startingPreferences()
}

export function keepPreferences(kept: Preferences): void {
  const { display, paper, sheets, bright, ownBoards, ownRules } = kept
  try {
    globalThis.localStorage?.setItem(
      KEY,
      JSON.stringify({ display, paper, sheets, bright, ownBoards, ownRules }),
    )
  } catch {
    // Preferences are a convenience: a browser that cannot keep them still works.
  }
}
