import { useStore } from 'zustand'
import { lazy, type ReactNode, Suspense, useEffect, useState } from 'react'
import { formatNumber } from '../../core/units'
import { announcementStore } from '../a11y/announce'
import { t } from '../text/t'
import { useDisplay } from '../text/useDisplay'
import { closeTrace, layOffcut, removeSelected, takeBack, turnOverSelected } from './canvasActions'
import { canvasStore, toolInHand } from './canvasStore'
import { forgetCamera } from './currentScene'
import { setsPoints } from './handles'
import { hintFor } from './hint'
import { zoomBy, ZOOM_STEP } from './keyInput'
import { LEAST_LINE_POINTS } from './tools/line/lineTool'
import { LEAST_RING_POINTS } from './tools/trace/drawing'
import type { Scene } from './tools/toolTypes'

const TracingBar = lazy(async () => {
  const { TracingBar: loaded } = await import('./TracingBar')
  return { default: loaded }
})

interface Props {
  readonly scene: Scene
}

/** Under the picture: what the tool wants next, what can be done with what is in hand, and the zoom. */
export function CanvasBar({ scene }: Props) {
  const display = useDisplay()
  const hand = useStore(canvasStore, (state) => toolInHand(state, scene.slab?.id ?? null, scene.tool))
  const unfinished = hand.unfinished.length
  const hint = hintFor(scene, unfinished, display)
  return (
    <div className="canvas-bar">
      <div className="canvas-help">
        <SaidPart />
        {hint !== null && (
          <p className="canvas-hint">
            {hint}
            {isFirstPoint(scene, unfinished) && (
              <span className="only-touch"> {t('canvas-hint-finger')}</span>
            )}
          </p>
        )}
        <CrossPart />
        <TracePart scene={scene} unfinished={unfinished} />
        {scene.stage === 'trace' && (
          <Suspense fallback={null}>
            <TracingBar scene={scene} />
          </Suspense>
        )}
        <PiecePart scene={scene} />
      </div>
      <ZoomPart />
    </div>
  )
}

/** Tools that need no aim: what they do is right under the finger. */
const WORKS_UNDER_FINGER: ReadonlySet<Scene['tool']> = new Set(['wood', 'notWood', 'proposals', 'push'])

/** How a finger aims is said once, before anything is set with the tool. */
const isFirstPoint = ({ tool, slab }: Scene, unfinished: number): boolean =>
  setsPoints(tool) &&
  !WORKS_UNDER_FINGER.has(tool) &&
  unfinished === 0 &&
  (tool !== 'mark' || slab?.marks.length === 0)

/** So long what was said stays on the picture, ms: two short sentences can be read in it. */
const SAID_MS = 6000

/** What has just been said, where it would surprise. */
function SaidPart() {
  const { text, isShown, count } = useStore(announcementStore)
  const [over, setOver] = useState(0)
  useEffect(() => {
    const timer = setTimeout(() => setOver(count), SAID_MS)
    return () => clearTimeout(timer)
  }, [count])
  return isShown && over !== count ? <p className="canvas-hint">{text}</p> : null
}

/** Where the cross of the arrow keys is, in the photo. */
function CrossPart() {
  const crosshair = useStore(canvasStore, (state) => state.crosshair)
  if (!crosshair) return null
  const [x, y] = crosshair.world
  return <p className="canvas-hint">{t('canvas-cross', { x: formatNumber(x), y: formatNumber(y) })}</p>
}

function TracePart({ scene, unfinished }: Props & { readonly unfinished: number }) {
  if (unfinished === 0) return null
  const isTrace = scene.tool === 'outline' || scene.tool === 'void'
  return (
    <>
      <button type="button" className="button canvas-trace-button" onClick={takeBack}>
        <span className="for-wide">{t('canvas-take-back')}</span>
        <span className="for-phone">{t('canvas-take-back-short')}</span>
      </button>
      {isTrace && unfinished >= LEAST_RING_POINTS && (
        <button type="button" className="button" onClick={closeTrace}>
          {t('canvas-close-trace')}
        </button>
      )}
      {scene.tool === 'line' && unfinished >= LEAST_LINE_POINTS && (
        <button type="button" className="button" onClick={closeTrace}>
          {t('canvas-line-done')}
        </button>
      )}
    </>
  )
}

function PiecePart({ scene: { view, selection, tray } }: Props) {
  if (view !== 'table') return null
  if (selection?.kind === 'placement') {
    return (
      <>
        <button type="button" className="button" onClick={turnOverSelected}>
          {t('canvas-turn-over')}
        </button>
        <button type="button" className="button" onClick={removeSelected}>
          {t('canvas-take-out')}
        </button>
      </>
    )
  }
  const inTray = selection?.kind === 'piece' && tray.some(({ piece }) => piece.key === selection.key)
  if (!inTray) return null
  return (
    <button type="button" className="button" onClick={() => layOffcut(selection.key)}>
      {t('canvas-lay-in')}
    </button>
  )
}

function ZoomPart() {
  return (
    <div className="canvas-zoom">
      <IconButton label={t('canvas-zoom-out')} onClick={() => zoomBy(1 / ZOOM_STEP)}>
        <path d="M5 12h14" />
      </IconButton>
      <IconButton label={t('canvas-fit')} onClick={forgetCamera}>
        <path d="M4 9V4h5M20 9V4h-5M4 15v5h5M20 15v5h-5" />
      </IconButton>
      <IconButton label={t('canvas-zoom-in')} onClick={() => zoomBy(ZOOM_STEP)}>
        <path d="M5 12h14M12 5v14" />
      </IconButton>
    </div>
  )
}

interface IconButtonProps {
  readonly label: string
  readonly onClick: () => void
  readonly children: ReactNode
}

function IconButton({ label, onClick, children }: IconButtonProps) {
  return (
    <button type="button" className="button" aria-label={label} title={label} onClick={onClick}>
      <svg
        width="20"
        height="20"
        viewBox="0 0 24 24"
        fill="none"
        stroke="currentColor"
        strokeWidth="2"
        aria-hidden="true"
      >
        {children}
      </svg>
    </button>
  )
}
