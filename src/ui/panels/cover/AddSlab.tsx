import { useState } from 'react'
import { useStore } from 'zustand'
import { sessionStore, type SessionState } from '../../../state/sessionStore'
import { addSlabPhotoFromDevice } from '../../files/jobFiles'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { PanelPart } from '../PanelPart'
import { YardSlab } from './YardSlab'

/** The maker's newest board, else the newest rule: its lengths in words, and it in hand at the stage Size. */
function useOwnReference(): { readonly size: string; readonly next: Partial<SessionState> } | null {
  const format = useFormat()
  const [boardSize] = useStore(sessionStore, ({ ownBoards }) => ownBoards)
  const [ruleSize] = useStore(sessionStore, ({ ownRules }) => ownRules)
  if (boardSize !== undefined) {
    const size = `${format.length(boardSize.lengthMm)} × ${format.length(boardSize.widthMm)}`
    return { size, next: { stage: 'scale', tool: 'board', boardSize } }
  }
  if (ruleSize === undefined) return null
  return { size: format.length(ruleSize.lengthMm), next: { stage: 'scale', tool: 'rule', ruleSize } }
}

/** With one's own board or rule on the slab there is nothing to type: photo, tap the reference, done. */
function ByPhoto() {
  const own = useOwnReference()
  return (
    <>
      {own !== null && (
        <button
          type="button"
          className="button button-main"
          onClick={() => void addSlabPhotoFromDevice(own.next)}
        >
          {t('slabs-add-own', { size: own.size })}
        </button>
      )}
      <button type="button" className="button" onClick={() => void addSlabPhotoFromDevice()}>
        {t('slabs-add-photo')}
      </button>
    </>
  )
}

/** One more candidate: by tape on big keys, or by a photo. */
export function AddSlab({ count }: { readonly count: number }) {
  const [isTyping, setTyping] = useState(false)
  return (
    <PanelPart title={t('slabs-add')} note={t('slabs-add-own-note')}>
      {isTyping ? (
        <YardSlab number={count + 1} onDone={() => setTyping(false)} />
      ) : (
        <div className="button-row">
          <button type="button" className="button" onClick={() => setTyping(true)}>
            {t('slabs-add-tape')}
          </button>
          <ByPhoto />
        </div>
      )}
    </PanelPart>
  )
}
