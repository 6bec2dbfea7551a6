import { useEffect } from 'react'
import { useStore } from 'zustand'
import { type SlabWindow, rectifyingTransform } from '../../../core/photo'
import type { SlabScaleResult } from '../../../core/plan'
import { planStorage } from '../../../state/storageDesk'
import { photoClient } from '../../photoClient'
import { readyValue, type SceneModel, slabBounds } from '../scene'
import type { Camera, Size } from '../view'
import { pictureStore, putPicture, setStatus, showPhoto } from './pictureStore'
import { cropForView, PREVIEW_PX, wholeWindow, windowForView } from './pictureWindows'

/** The view has come to rest when it has not moved for so long, ms. */
const REST_MS = 150

const devicePixels = (): number => globalThis.devicePixelRatio || 1

/** Aborted work is no failure: something newer is on its way. */
const isAbort = (reason: unknown): boolean => reason instanceof DOMException && reason.name === 'AbortError'

/** Opens the photo that is shown, and keeps bitmaps of it at hand that are sharp enough for the view at rest. */
export function usePictures(model: SceneModel, camera: Camera, size: Size): void {
  const hash = model.photo?.hash ?? null
  const scale = readyValue(model.slabResult?.scale)
  useOpenPhoto(hash)
  useSharpCrop(model, camera, size)
  useWholeAbove(hash, scale, model)
  useSharpAbove(model, scale, camera, size)
}

function useOpenPhoto(hash: string | null): void {
  useEffect(() => {
    showPhoto(hash)
    if (hash === null) return
    openPhoto(hash).catch(() => setStatus(hash, 'lost'))
  }, [hash])
}

async function openPhoto(hash: string): Promise<void> {
  const bytes = await (await planStorage()).readPhoto(hash)
  if (bytes === null) return setStatus(hash, 'lost')
  const client = photoClient()
  const { widthPx, heightPx } = await client.open(hash, bytes)
  const bitmap = await client.preview(hash, PREVIEW_PX)
  putPicture(hash, 'preview', { bitmap, area: { minX: 0, minY: 0, maxX: widthPx, maxY: heightPx } })
  setStatus(hash, 'ready')
}

/** Runs once nothing has changed for a while; what is under way is called off when something does. */
function useAtRest(work: ((signal: AbortSignal) => Promise<void>) | null, watched: readonly unknown[]): void {
  useEffect(() => {
    if (work === null) return
    const abort = new AbortController()
    const timer = setTimeout(() => {
      work(abort.signal).catch((reason: unknown) => {
        // The small picture stays, which is what the maker has anyway.
        if (!isAbort(reason)) console.warn(reason)
      })
    }, REST_MS)
    return () => {
      clearTimeout(timer)
      abort.abort()
    }
    // `work` closes over what is watched and nothing else.
  }, watched)
}

function useSharpCrop({ photo, view }: SceneModel, camera: Camera, size: Size): void {
  const ready = usePhotoReady(photo?.hash ?? null)
  const work =
    photo && ready && view === 'photo'
      ? async (signal: AbortSignal) => {
          const request = cropForView(photo, camera, size, devicePixels())
          if (!request) return putPicture(photo.hash, 'sharp', null)
          const { area, outWidthPx, outHeightPx } = request
          const bitmap = await photoClient().crop(photo.hash, pixelArea(area), outWidthPx, outHeightPx, {
            signal,
          })
          putPicture(photo.hash, 'sharp', { bitmap, area })
        }
      : null
  useAtRest(work, [photo, ready, view, camera, size])
}

export const pixelArea = ({
  minX,
  minY,
  maxX,
  maxY,
}: {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}) => ({ xPx: minX, yPx: minY, widthPx: maxX - minX, heightPx: maxY - minY })

function useWholeAbove(hash: string | null, scale: SlabScaleResult | null, model: SceneModel): void {
  const ready = usePhotoReady(hash)
  const wanted = model.view !== 'photo'
  const bounds = slabBounds(model.slabResult)
  const work =
    hash && ready && wanted && scale && bounds
      ? (signal: AbortSignal) => rectify(hash, scale, wholeWindow(bounds), 'above', signal)
      : null
  useAtRest(work, [hash, ready, wanted, scale, model.slabResult])
}

function useSharpAbove(model: SceneModel, scale: SlabScaleResult | null, camera: Camera, size: Size): void {
  const hash = model.photo?.hash ?? null
  const hasSmall = useHasSmallAbove()
  const bounds = slabBounds(model.slabResult)
  const work =
    hash && hasSmall && model.view === 'above' && scale && bounds
      ? async (signal: AbortSignal) => {
          const window = windowForView(bounds, camera, size, devicePixels(), scale.pxPerMm)
          if (window) await rectify(hash, scale, window, 'aboveSharp', signal)
          else putPicture(hash, 'aboveSharp', null)
        }
      : null
  useAtRest(work, [hash, hasSmall, model.view, scale, model.slabResult, camera, size])
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
