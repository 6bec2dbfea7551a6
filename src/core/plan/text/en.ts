import { coverTexts } from './en/ui/cover'
import { helpTexts } from './en/ui/help'
import { paperTexts } from './en/ui/paper'
import { pourTexts } from './en/ui/pour'
import { slabTexts } from './en/ui/slab'
import { tableTexts } from './en/ui/table'
import { textsAtOnce } from './textsAtOnce'

/** All texts of the screen, by key. */
export const en = {
  ...textsAtOnce,
  ...tableTexts,
  ...slabTexts,
  ...coverTexts,
  ...pourTexts,
  ...helpTexts,
  ...paperTexts,
} as const

export type Catalogue = typeof en
