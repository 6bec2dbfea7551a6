import { commandTexts } from './en/commands'
import { canvasTexts } from './en/ui/canvas'
import { keepingTexts } from './en/ui/keeping'
import { traceTexts } from './en/ui/trace'
import { workbenchTexts } from './en/ui/workbench'

/** The texts that the first view may need; the others come with the parts that use them. */
export const textsAtOnce = {
  ...commandTexts,
  ...workbenchTexts,
  ...traceTexts,
  ...canvasTexts,
  ...keepingTexts,
} as const
