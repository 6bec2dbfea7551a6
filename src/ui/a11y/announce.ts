import { createStore } from 'zustand/vanilla'

interface Announcement {
  readonly text: string
  /** On the picture as well, for a while: it is not what the maker meant to happen, or it cannot be seen otherwise. */
  readonly isShown: boolean
  /** Counts up, so that the same sentence twice is spoken twice. */
  readonly count: number
}

export const announcementStore = createStore<Announcement>(() => ({ text: '', isShown: false, count: 0 }))

/** Has a short sentence read out by a screen reader, once it has finished what it is saying. */
export function announce(text: string, isShown = false): void {
  announcementStore.setState(({ count }) => ({ text, isShown, count: count + 1 }))
}
