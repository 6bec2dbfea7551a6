import { commandTexts } from './en/commands'
import { coverTexts } from './en/ui/cover'
import { canvasTexts } from './en/ui/canvas'
import { helpTexts } from './en/ui/help'
import { keepingTexts } from './en/ui/keeping'
import { paperTexts } from './en/ui/paper'
import { pourTexts } from './en/ui/pour'
import { slabTexts } from './en/ui/slab'
import { tableTexts } from './en/ui/table'
import { traceTexts } from './en/ui/trace'
import { workbenchTexts } from './en/ui/workbench'

/** All texts of the screen, by key. */
export const en = {
  ...commandTexts,
  ...workbenchTexts,
  ...slabTexts,
  ...tableTexts,
  ...coverTexts,
  ...traceTexts,
  ...pourTexts,
  ...helpTexts,
  ...canvasTexts,
  ...keepingTexts,
  ...paperTexts,
} as const

export type Catalogue = typeof en
