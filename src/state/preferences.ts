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

// Read by hand and not by the schema library: preferences are wanted before anything else is fetched.
type Fields = Readonly<Record<string, unknown>>

const fieldsOf = (value: unknown): Fields =>
  typeof value === 'object' && value !== null ? (value as Fields) : {}

const itemsOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])

const isLength = (value: unknown): value is number =>
  typeof value === 'number' && value > 0 && value <= GREATEST_LENGTH_MM

const isThickness = (value: unknown): value is number => value === 0 || isLength(value)

const PAPERS: readonly PaperName[] = ['a4', 'a3', 'letter', 'tabloid']
const FRACTIONS = [8, 16, 32] as const

function displayOf(value: unknown): LengthDisplay | null {
  const { system, fraction } = fieldsOf(value)
  if (system === 'mm') return { system }
  const known = FRACTIONS.find((usual) => usual === fraction)
  return system === 'inch' && known !== undefined ? { system, fraction: known } : null
}

function boardsOf(value: unknown): readonly BoardSize[] {
  return itemsOf(value).flatMap((item) => {
    const { lengthMm, widthMm, thicknessMm } = fieldsOf(item)
    return isLength(lengthMm) && isLength(widthMm) && isThickness(thicknessMm)
      ? [{ lengthMm, widthMm, thicknessMm }]
      : []
  })
}

function rulesOf(value: unknown): readonly RuleSize[] {
  return itemsOf(value).flatMap((item) => {
    const { lengthMm, thicknessMm } = fieldsOf(item)
    return isLength(lengthMm) && isThickness(thicknessMm) ? [{ lengthMm, thicknessMm }] : []
  })
}

/** What can be read is kept; the rest is as in a browser that is new to the program. */
function preferencesOf(value: unknown, otherwise: Preferences): Preferences {
  const { display, paper, sheets, bright, ownBoards, ownRules } = fieldsOf(value)
  return {
    display: displayOf(display) ?? otherwise.display,
    paper: PAPERS.find((known) => known === paper) ?? null,
    sheets: Array.isArray(sheets) ? SHEET_KINDS.filter((kind) => sheets.includes(kind)) : otherwise.sheets,
    bright: bright === true,
    ownBoards: boardsOf(ownBoards),
    ownRules: rulesOf(ownRules),
  }
}

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
  return preferencesOf(parsed(storedText() ?? 'null'), startingPreferences())
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
