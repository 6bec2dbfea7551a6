import { useStore } from 'zustand'
import type { Photo, Trace } from '../../core/plan'
import { tracingOn, tracingStore } from '../../state/tracingStore'
import { ActionButton } from '../actions/ActionButton'
import { actionById } from '../actions/perform'
import { OutlineButtons } from '../canvas'
import { t } from '../text/t'
import { PanelPart } from './PanelPart'

interface Props {
  readonly photo: Photo
  readonly outline: Trace | undefined
}

/** The ways to get the outline: from strokes, along the edge, point by point. */
export function FindEdgePart({ photo, outline }: Props) {
  const isNew = outline === undefined
  return (
    <PanelPart
      title={t(isNew ? 'find-title' : 'find-again')}
      note={t(isNew ? 'find-note' : 'find-note-again')}
    >
      <div className="button-row">
        <ActionButton id="tool-wood" {...(isNew ? { className: 'button-main' } : {})} />
        <ActionButton id="tool-not-wood" />
      </div>
      <Proposal photoId={photo.id} />
      {isNew && (
        <div className="button-row">
          <ActionButton id="tool-follow" label={t('find-follow')} />
          <button type="button" className="button" onClick={actionById('tool-outline').perform}>
            {t('find-by-points')}
          </button>
        </div>
      )}
    </PanelPart>
  )
}

function Proposal({ photoId }: { readonly photoId: string }) {
  const strokes = useStore(tracingStore, (state) => tracingOn(state, photoId).strokes.length)
  const points = useStore(tracingStore, (state) => tracingOn(state, photoId).outlinePx?.length ?? 0)
  const isLooking = useStore(tracingStore, (state) => tracingOn(state, photoId).isFindingOutline)
  if (strokes === 0) return null
  return (
    <>
      <p role="status">
        {t('find-strokes', { count: strokes })}{' '}
        {isLooking ? t('find-looking') : points > 0 && t('find-points', { count: points })}
      </p>
      <div className="button-row">
        <OutlineButtons photoId={photoId} />
      </div>
    </>
  )
}
