import { useStore } from 'zustand'
import { announcementStore } from './announce'

/**
 * Where announcements appear for screen readers; out of sight. Two elements take turns: a sentence that is said again
 * is a change too, and the old one does not stay to be found.
 */
export function LiveRegion() {
  const { text, count } = useStore(announcementStore)
  const even = count % 2 === 0
  return (
    <div className="unseen" role="status" aria-live="polite">
      <span>{even ? text : ''}</span>
      <span>{even ? '' : text}</span>
    </div>
  )
}
