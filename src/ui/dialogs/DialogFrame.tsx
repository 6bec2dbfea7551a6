import { type ReactNode, useEffect, useId, useRef } from 'react'
import { t } from '../text/t'

interface Props {
  readonly title: string
  readonly onClose: () => void
  readonly children: ReactNode
}

/** A dialog over the workbench; Escape and the button close it, and the focus goes back to where it was. */
export function DialogFrame({ title, onClose, children }: Props) {
  const id = useId()
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const element = dialog.current
    element?.showModal()
    return () => element?.close()
  }, [])
  return (
    <dialog ref={dialog} aria-labelledby={id} onClose={onClose}>
      <div className="dialog-head">
        <h2 id={id}>{title}</h2>
        <button type="button" className="button" onClick={onClose}>
          {t('close')}
        </button>
      </div>
      <div className="dialog-body">{children}</div>
    </dialog>
  )
}
