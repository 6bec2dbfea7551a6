import { type ComponentType, useEffect, useState } from 'react'
import { flushSync } from 'react-dom'
import { useStore } from 'zustand'
import { sessionStore } from '../state/sessionStore'

/** The sheets and their font come once the first view is up: a print command leaves no time to fetch them. */
const FETCH_AFTER_MS = 3000

/** Has the browser's print command give the sheets at every stage, and not a picture of the workbench. */
export function PrintFromAnywhere() {
  const atPaper = useStore(sessionStore, ({ stage }) => stage === 'paper')
  const [Pages, setPages] = useState<ComponentType | null>(null)
  const [isPrinting, setIsPrinting] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => {
      void import('./sheets').then(async ({ loadSheetFont, PrintPages }) => {
        await loadSheetFont()
        setPages(() => PrintPages)
      })
    }, FETCH_AFTER_MS)
    return () => clearTimeout(timer)
  }, [])
  useEffect(() => {
    // The browser takes the page as it stands when this event has been heard.
    const begin = (): void => flushSync(() => setIsPrinting(true))
    const end = (): void => setIsPrinting(false)
    window.addEventListener('beforeprint', begin)
    window.addEventListener('afterprint', end)
    return () => {
      window.removeEventListener('beforeprint', begin)
      window.removeEventListener('afterprint', end)
    }
  }, [])
  return isPrinting && !atPaper && Pages !== null ? <Pages /> : null
}
