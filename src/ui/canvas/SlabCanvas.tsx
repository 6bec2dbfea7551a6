import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { sessionStore } from '../../state/sessionStore'
import { t } from '../text/t'
import './canvas.css'
import { CanvasBar } from './CanvasBar'
import { CanvasNote } from './CanvasNote'
import { canvasStore } from './canvasStore'
import { type Ink, inkOf } from './ink'
import { listenToKeys } from './keyInput'
import { CanvasLayers } from './layers/CanvasLayers'
import { PaintStage } from './layers/PaintStage'
import { Loupe } from './loupe/Loupe'
import { usePictures } from './photo/usePictures'
import { listenToPointers } from './pointerInput'
import { usePublishedPositions } from './screenPositions'
import { useScenes } from './useScenes'
import { resizedCamera } from './view'

/** The slab in the view of the session, with its tools. Fills its container. */
export function SlabCanvas() {
  const [host, setHost] = useState<HTMLDivElement | null>(null)
  const { settled, shown } = useScenes()
  const ink = useInk(host)
  const isPanning = useStore(canvasStore, (state) => state.isPanning)
  usePictures(settled, settled.camera, settled.size)
  usePublishedPositions(shown, shown !== settled || isPanning, host)
  useInput(host)
  const { width, height } = settled.size
  const label = t(`canvas-label-${settled.view}`)
  return (
    <div
      className="slab-canvas"
      data-view={settled.view}
      data-tool={settled.tool}
      data-panning={isPanning || null}
    >
      <div
        ref={setHost}
        className="slab-canvas-host"
        role="application"
        tabIndex={0}
        aria-label={label}
        aria-describedby="canvas-help"
      >
        {ink && width > 0 && height > 0 && (
          <PaintStage width={width} height={height}>
            <CanvasLayers settled={settled} shown={shown} ink={ink} />
          </PaintStage>
        )}
        <Loupe scene={settled} />
      </div>
      <p id="canvas-help" hidden>
        {t('canvas-help')}
      </p>
      <CanvasNote scene={settled} />
      <CanvasBar scene={settled} />
    </div>
  )
}

/** The page's colours; read again when bright mode changes, after the page has changed its own. */
function useInk(host: HTMLElement | null): Ink | null {
  const bright = useStore(sessionStore, (session) => session.bright)
  const [ink, setInk] = useState<Ink | null>(null)
  useEffect(() => {
    if (!host) return
    const frame = requestAnimationFrame(() => setInk(inkOf(host, bright)))
    return () => cancelAnimationFrame(frame)
  }, [host, bright])
  return ink
}

function useInput(host: HTMLElement | null): void {
  const isSized = useRef(false)
  useEffect(() => {
    if (!host) return
    const stopPointers = listenToPointers(host)
    const stopKeys = listenToKeys(host)
    const watcher = new ResizeObserver(() => {
      fitTo(host, isSized.current)
      isSized.current = true
    })
    watcher.observe(host)
    return () => {
      stopPointers()
      stopKeys()
      watcher.disconnect()
    }
  }, [host])
}

/** Views that were zoomed by hand keep their middle; the others fit themselves anyway. */
function fitTo(host: HTMLElement, wasSized: boolean): void {
  const size = { width: host.clientWidth, height: host.clientHeight }
  canvasStore.setState(({ cameras, size: before }) => ({
    size,
    cameras: wasSized
      ? new Map([...cameras].map(([key, camera]) => [key, resizedCamera(camera, before, size)]))
      : cameras,
  }))
}
