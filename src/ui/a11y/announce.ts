import { createStore } from 'zustand/vanilla'

interface Announcement {
  readonly text: string
  /** Counts up, so that the same sentence twice is spoken twice. */
  readonly count: number
}

export const announcementStore = createStore<Announcement>(() => ({ text: '', count: 0 }))

/** Has a short sentence read out by a screen reader, once it has finished what it is saying. */
export function announce(text: string): void {
  announcementStore.setState(({ count }) => ({ text, count: count + 1 }))
}
