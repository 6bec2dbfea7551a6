import { useStore } from 'zustand'
import type { PaperName } from '../../../core/drawing'
import { usualPaper } from '../../../state/preferences'
import { sessionStore } from '../../../state/sessionStore'

/** The paper that was chosen; until then the one that goes with the units. */
export const usePaper = (): PaperName =>
  useStore(sessionStore, ({ paper, display }) => paper ?? usualPaper(display))
