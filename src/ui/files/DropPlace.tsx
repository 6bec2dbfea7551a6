import { useEffect, useState } from 'react'
import { t } from '../text/t'
import { openAnyFile } from './jobFiles'

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false

const pastedFile = (event: ClipboardEvent): File | null => event.clipboardData?.files[0] ?? null

/** Files may be dropped anywhere on the page, or pasted. */
export function DropPlace() {
  const [isOver, setOver] = useState(false)

  useEffect(() => {
    const onDragOver = (event: DragEvent) => {
      if (!hasFiles(event)) return
      event.preventDefault()
      setOver(true)
    }
    const onDragLeave = (event: DragEvent) => {
      // Only when the pointer leaves the window: between elements it has somewhere to go to.
      if (event.relatedTarget === null) setOver(false)
    }
    const onDrop = (event: DragEvent) => {
      if (!hasFiles(event)) return
      event.preventDefault()
      setOver(false)
      const file = event.dataTransfer?.files[0]
      if (file !== undefined) void openAnyFile(file)
    }
    const onPaste = (event: ClipboardEvent) => {
      const file = pastedFile(event)
      if (file !== null) void openAnyFile(file)
    }
    const listening = new AbortController()
    const { signal } = listening
    window.addEventListener('dragover', onDragOver, { signal })
    window.addEventListener('dragleave', onDragLeave, { signal })
    window.addEventListener('drop', onDrop, { signal })
    window.addEventListener('paste', onPaste, { signal })
    return () => listening.abort()
  }, [])

  return isOver ? <div className="drop-here">{t('drop-here')}</div> : null
}
