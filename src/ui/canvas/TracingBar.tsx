import { type ReactNode, useEffect } from 'react'
import { useStore } from 'zustand'
import { sessionStore, type ToolName } from '../../state/sessionStore'
import { prepareEdge, takeBackStroke } from '../../state/traceDesk'
import { tracingOn, tracingStore } from '../../state/tracingStore'
import { t } from '../text/t'
import { closeTrace, takeBack } from './canvasActions'
import type { Scene } from './tools/toolTypes'
import { acceptOutline, acceptVoid, declineVoid, discardOutline, PUSH_RADIUS_PX } from './tracing'

interface Props {
  readonly scene: Scene
}

/** What can be done with what the program proposes on this photo, and with the line that follows the edge. */
export function TracingBar({ scene }: Props) {
  const Part = PARTS[scene.tool]
  return Part === undefined ? null : <Part scene={scene} />
}

const PARTS: { readonly [Tool in ToolName]?: (props: Props) => ReactNode } = {
  wood: StrokeButtons,
  notWood: StrokeButtons,
  proposals: VoidButtons,
  push: PushSize,
  outline: EdgeButtons,
  void: EdgeButtons,
  redraw: EdgeButtons,
}

function StrokeButtons({ scene }: Props) {
  return <OutlineButtons photoId={scene.photo?.id ?? null} />
}

interface PhotoProps {
  readonly photoId: string | null
}

/** Strokes taken back, the outline accepted or let go. */
export function OutlineButtons({ photoId }: PhotoProps) {
  const count = useStore(tracingStore, (state) => tracingOn(state, photoId).strokes.length)
  const canAccept = useStore(
    tracingStore,
    (state) => tracingOn(state, photoId).outlinePx !== null && !state.isFindingOutline,
  )
  if (count === 0) return null
  return (
    <>
      <button type="button" className="button button-main" disabled={!canAccept} onClick={acceptOutline}>
        {t('outline-accept')}
      </button>
      <button type="button" className="button" onClick={takeBackStroke}>
        <span className="for-wide">{t('stroke-take-back')}</span>
        <span className="for-phone">{t('stroke-take-back-short')}</span>
      </button>
      <button type="button" className="button" onClick={discardOutline}>
        {t('outline-discard')}
      </button>
    </>
  )
}

function VoidButtons({ scene }: Props) {
  const photoId = scene.photo?.id
  const id = useStore(tracingStore, (state) => tracingOn(state, photoId).chosenVoid)
  const number = useStore(
    tracingStore,
    (state) => (tracingOn(state, photoId).voids?.findIndex((proposed) => proposed.id === id) ?? -1) + 1,
  )
  if (id === null) return null
  return (
    <>
      <p className="canvas-hint">{t('proposal-name', { number: String(number) })}</p>
      <button type="button" className="button button-main" onClick={() => acceptVoid(id)}>
        {t('proposal-accept')}
      </button>
      <button type="button" className="button" onClick={() => declineVoid(id)}>
        {t('proposal-decline')}
      </button>
    </>
  )
}

function EdgeButtons({ scene }: Props) {
  const follows = useStore(sessionStore, (state) => state.followsEdge)
  const isDrawing = useStore(
    tracingStore,
    (state) => tracingOn(state, scene.photo?.id).edge?.meaning === scene.tool,
  )
  const { slab, photo } = scene
  const slabId = slab?.id
  useEffect(() => {
    if (!follows || !photo || slabId === undefined) return
    void prepareEdge({ slabId, photoId: photo.id, hash: photo.hash })
  }, [follows, photo, slabId])
  return (
    <>
      <button
        type="button"
        className="button"
        aria-pressed={follows}
        onClick={() => sessionStore.setState({ followsEdge: !follows })}
      >
        {t('canvas-follow')}
      </button>
      {isDrawing && (
        <>
          <button type="button" className="button" onClick={takeBack}>
            <span className="for-wide">{t('canvas-take-back-stretch')}</span>
            <span className="for-phone">{t('stroke-take-back-short')}</span>
          </button>
          {scene.tool !== 'redraw' && (
            <button type="button" className="button" onClick={closeTrace}>
              {t('canvas-close-trace')}
            </button>
          )}
        </>
      )}
    </>
  )
}

function PushSize() {
  const radiusPx = useStore(sessionStore, (state) => state.pushRadiusPx)
  return (
    <label className="canvas-hint push-size">
      {t('push-size')}
      <input
        type="range"
        min={PUSH_RADIUS_PX.least}
        max={PUSH_RADIUS_PX.most}
        value={radiusPx}
        onChange={(event) => sessionStore.setState({ pushRadiusPx: event.currentTarget.valueAsNumber })}
      />
    </label>
  )
}
