import { useEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Bounds } from '../../../core/geometry'
import { type SlabWindow, rectifyingTransform } from '../../../core/photo'
import type { SlabScaleResult } from '../../../core/plan'
import { setNotice } from '../../../state/sessionStore'
import { planStorage } from '../../../state/storageDesk'
import { JobProblem } from '../../../workers/workerLink'
import { photoClient } from '../../photoClient'
import { readyValue } from '../../readyValue'
import { type SceneModel, slabBounds } from '../scene'
import type { Camera, Size } from '../view'
import { pictureStore, putPicture, setStatus, showPhoto } from './pictureStore'
import { cropForView, PREVIEW_PX, wholeWindow, windowForView } from './pictureWindows'

/** The view has come to rest when it has not moved for so long, ms. */
const REST_MS = 150

const devicePixels = (): number => globalThis.devicePixelRatio || 1

/** Opens the photo that is shown, and keeps bitmaps of it at hand that are sharp enough for the view at rest. */
export function usePictures(model: SceneModel, camera: Camera, size: Size): void {
  const hash = model.photo?.hash ?? null
  useOpenPhoto(hash)
  useSharpCrop(model, camera, size)
  useWholeAbove(hash, model)
  useSharpAbove(model, camera, size)
}

function useOpenPhoto(hash: string | null): void {
  useEffect(() => {
    showPhoto(hash)
    if (hash !== null) void openPhoto(hash)
  }, [hash])
}

async function openPhoto(hash: string): Promise<void> {
  try {
    const bytes = await (await planStorage()).readPhoto(hash)
    if (bytes === null) return setStatus(hash, 'lost')
    const client = photoClient()
    const { widthPx, heightPx } = await client.open(hash, bytes)
    const bitmap = await client.preview(hash, PREVIEW_PX)
    putPicture(hash, 'preview', { bitmap, area: { minX: 0, minY: 0, maxX: widthPx, maxY: heightPx } })
    setStatus(hash, 'ready')
  } catch (reason) {
    setStatus(hash, 'lost')
    tellProblem(reason)
  }
}

/** Aborted work is no failure, something newer is on its way; a problem of the job is told; the rest is our own bug. */
function tellProblem(reason: unknown): void {
  if (reason instanceof DOMException && reason.name === 'AbortError') return
  if (!(reason instanceof JobProblem)) throw reason
  setNotice(reason.problem)
}

type Work = (signal: AbortSignal) => Promise<void>

/** Runs once nothing has changed for a while; what is under way is called off when something does. */
function useAtRest(work: Work | null): void {
  useEffect(() => {
    if (work === null) return
    const abort = new AbortController()
    const timer = setTimeout(() => {
      work(abort.signal).catch(tellProblem)
    }, REST_MS)
    return () => {
      clearTimeout(timer)
      abort.abort()
    }
  }, [work])
}

function useSharpCrop({ photo, view }: SceneModel, camera: Camera, size: Size): void {
  const ready = usePhotoReady(photo?.hash ?? null)
  const work = useMemo((): Work | null => {
    if (!photo || !ready || view !== 'photo') return null
    const { hash } = photo
    return async (signal) => {
      const request = cropForView(photo, camera, size, devicePixels())
      if (!request) return putPicture(hash, 'sharp', null)
      const { area, outWidthPx, outHeightPx } = request
      const bitmap = await photoClient().crop(hash, pixelArea(area), outWidthPx, outHeightPx, { signal })
      putPicture(hash, 'sharp', { bitmap, area })
    }
  }, [photo, ready, view, camera, size])
  useAtRest(work)
}

export const pixelArea = ({ minX, minY, maxX, maxY }: Bounds) => ({
  xPx: minX,
  yPx: minY,
  widthPx: maxX - minX,
  heightPx: maxY - minY,
})

function useWholeAbove(hash: string | null, { view, slabResult }: SceneModel): void {
  const ready = usePhotoReady(hash)
  const isWanted = ready && view !== 'photo'
  const work = useMemo((): Work | null => {
    const scale = readyValue(slabResult?.scale)
    const bounds = slabBounds(slabResult)
    if (!hash || !isWanted || !scale || !bounds) return null
    return (signal) => rectify(hash, scale, wholeWindow(bounds), 'above', signal)
  }, [hash, isWanted, slabResult])
  useAtRest(work)
}

function useSharpAbove({ photo, view, slabResult }: SceneModel, camera: Camera, size: Size): void {
  const hash = photo?.hash ?? null
  const isWanted = useHasSmallAbove() && view === 'above'
  const work = useMemo((): Work | null => {
    const scale = readyValue(slabResult?.scale)
    const bounds = slabBounds(slabResult)
    if (!hash || !isWanted || !scale || !bounds) return null
    return async (signal) => {
      const window = windowForView(bounds, camera, size, devicePixels(), scale.pxPerMm)
      if (window) await rectify(hash, scale, window, 'aboveSharp', signal)
      else putPicture(hash, 'aboveSharp', null)
    }
  }, [hash, isWanted, slabResult, camera, size])
  useAtRest(work)
}

async function rectify(
  hash: string,
  scale: SlabScaleResult,
  window: SlabWindow,
  slot: 'above' | 'aboveSharp',
  signal: AbortSignal,
): Promise<void> {
  const bitmap = await photoClient().rectify(hash, rectifyingTransform(scale.frame, window), { signal })
  // A new small picture means a new scale: the sharp one no longer lies where it was.
  if (slot === 'above') putPicture(hash, 'aboveSharp', null)
  const { minXMm, minYMm, maxXMm, maxYMm } = window
  putPicture(hash, slot, { bitmap, area: { minX: minXMm, minY: minYMm, maxX: maxXMm, maxY: maxYMm } })
}

function usePhotoReady(hash: string | null): boolean {
  return useStore(pictureStore, (pictures) => pictures.hash === hash && pictures.status === 'ready')
}

/** The sharp picture waits for the small one: the worker would call off the older of the two. */
const useHasSmallAbove = (): boolean => useStore(pictureStore, ({ above }) => above !== null)
