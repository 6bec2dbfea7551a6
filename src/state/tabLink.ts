import { newId } from './newId'

/** This page, as long as it is loaded. */
export const TAB_ID = newId()

export type TabMessage =
  /** A tab has put a plan on its bench; others that have it there answer. */
  | { readonly kind: 'opened'; readonly planId: string; readonly tabId: string }
  | { readonly kind: 'also-open'; readonly planId: string; readonly tabId: string; readonly to: string }
  | {
      readonly kind: 'saved'
      readonly planId: string
      readonly tabId: string
      readonly revision: number
      readonly savedAtMs: number
    }

const NAME = 'waneline-tabs'

let channel: BroadcastChannel | null = null

/**
 * Starts hearing what the other tabs of this browser say. They are only told early: what keeps one tab from writing
 * over another's work is the revision, checked in the transaction that writes.
 * @returns a function that stops it
 */
export function listenToTabs(hear: (message: TabMessage) => void): () => void {
  if (typeof BroadcastChannel === 'undefined') return () => undefined
  const opened = new BroadcastChannel(NAME)
  // Only our own pages of the same origin speak on this channel.
  opened.onmessage = (event: MessageEvent<TabMessage>) => hear(event.data)
  channel = opened
  return () => {
    opened.close()
    if (channel === opened) channel = null
  }
}

export const tellTabs = (message: TabMessage): void => channel?.postMessage(message)
