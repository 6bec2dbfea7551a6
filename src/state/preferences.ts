import * as z from 'zod/mini'
import { GREATEST_LENGTH_MM } from '../core/plan'
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
  readonly paper: 'a4' | 'letter'
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
  paper: z.enum(['a4', 'letter']),
  bright: z.boolean(),
  ownBoards: z._default(z.array(board), []),
  ownRules: z._default(z.array(rule), []),
})

const plain = { bright: false, ownBoards: [], ownRules: [] } as const

/** Places that measure by the inch print on Letter; all others use mm and A4. */
function startingPreferences(): Preferences {
  const region = globalThis.navigator?.language ?? ''
  const isInchCountry = /^(en|es)-(US|LR)$|^my|-MM$/.test(region)
  return isInchCountry
    ? { display: { system: 'inch', fraction: 16 }, paper: 'letter', ...plain }
    : { display: { system: 'mm' }, paper: region.endsWith('-CA') ? 'letter' : 'a4', ...plain }
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

export function keepPreferences({ display, paper, bright, ownBoards, ownRules }: Preferences): void {
  try {
    globalThis.localStorage?.setItem(KEY, JSON.stringify({ display, paper, bright, ownBoards, ownRules }))
  } catch {
    // Preferences are a convenience: a browser that cannot keep them still works.
  }
}
