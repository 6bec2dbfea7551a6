import { useStore } from 'zustand'
import type { LengthDisplay } from '../../core/units'
import { sessionStore } from '../../state/sessionStore'

/** The units that lengths are shown in, and read in when none is typed. */
export const useDisplay = (): LengthDisplay => useStore(sessionStore, (session) => session.display)
