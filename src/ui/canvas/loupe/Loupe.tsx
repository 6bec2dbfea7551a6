import { useEffect, useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { Point } from '../../../core/geometry'
import { type FollowedEdge, tracingOn, tracingStore } from '../../../state/tracingStore'
import { photoClient } from '../../photoClient'
import { canvasStore, toolInHand } from '../canvasStore'
import { pictureStore, putPicture, type Pictures } from '../photo/pictureStore'
import { isWithin } from '../photo/pictureWindows'
import { pixelArea } from '../photo/usePictures'
import type { Scene } from '../tools/toolTypes'
import { screenOf } from '../view'
import { LOUPE_POWER, LOUPE_RADIUS_PX, loupeCentre } from './loupePlace'

const SIDE_PX = 2 * LOUPE_RADIUS_PX
/** The sharp crop reaches this much further than the loupe, so that small moves need no new one. */
const CROP_REACH = 3

interface Props {
  readonly scene: Scene
}

/** A round window on the photo beside the finger, three times as large, with a cross at the point being set. */
export function Loupe({ scene }: Props) {
  const hand = useStore(canvasStore, (state) => toolInHand(state, scene.slab?.id ?? null, scene.tool))
  const crosshair = useStore(canvasStore, (state) => state.crosshair)
  if (scene.view !== 'photo') return null
  const aim = hand.aim
  if (aim) {
    return (
      <LoupeAt scene={scene} world={aim.world} pointerAt={aim.pointerAt} touch={aim.pointer === 'touch'} />
    )
  }
  if (!crosshair) return null
  const at = screenOf(scene.camera, crosshair.world)
  return <LoupeAt scene={scene} world={crosshair.world} pointerAt={at} touch={false} />
}

interface AtProps extends Props {
  readonly world: Point
  readonly pointerAt: Point
  readonly touch: boolean
}

function LoupeAt({ scene, world, pointerAt, touch }: AtProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const pictures = useStore(pictureStore)
  const edge = useStore(tracingStore, (state) => tracingOn(state, scene.photo?.id).edge)
  const [x, y] = loupeCentre(pointerAt, screenOf(scene.camera, world), touch, scene.size)
  const pxPerWorld = scene.camera.scale * LOUPE_POWER
  useSharpRound(scene, world, pxPerWorld)
  useLayoutEffect(() => {
    const brush = canvas.current?.getContext('2d')
    if (!brush) return
    paintLoupe(brush, pictures, world, pxPerWorld)
    if (edge?.meaning === scene.tool) paintEdge(brush, edge, world, pxPerWorld)
    paintCross(brush)
  }, [pictures, world, pxPerWorld, edge, scene.tool])
  const ratio = globalThis.devicePixelRatio || 1
  return (
    <canvas
      ref={canvas}
      className="loupe"
      width={SIDE_PX * ratio}
      height={SIDE_PX * ratio}
      style={{
        width: SIDE_PX,
        height: SIDE_PX,
        transform: `translate(${x - LOUPE_RADIUS_PX}px, ${y - LOUPE_RADIUS_PX}px)`,
      }}
      aria-hidden="true"
    />
  )
}

/** Fetches a sharp crop round the point whenever the one at hand does not reach. One at a time. */
function useSharpRound({ photo }: Scene, [x, y]: Point, pxPerWorld: number): void {
  const busy = useRef(false)
  const hash = photo?.hash
  useEffect(() => {
    if (!hash || busy.current) return
    const half = LOUPE_RADIUS_PX / pxPerWorld
    const seen = { minX: x - half, minY: y - half, maxX: x + half, maxY: y + half }
    const have = pictureStore.getState().loupe
    const side = 2 * half * CROP_REACH
    const isFine = have && isWithin(seen, have.area) && have.area.maxX - have.area.minX <= side * 2
    if (isFine || side < 2) return
    const area = {
      minX: Math.floor(x - side / 2),
      minY: Math.floor(y - side / 2),
      maxX: Math.ceil(x + side / 2),
      maxY: Math.ceil(y + side / 2),
    }
    const out = Math.min(area.maxX - area.minX, SIDE_PX * CROP_REACH * 2)
    busy.current = true
    photoClient()
      .crop(hash, pixelArea(area), out, out)
      .then((bitmap) => putPicture(hash, 'loupe', { bitmap, area }))
      .catch(() => undefined)
      .finally(() => {
        busy.current = false
      })
  }, [hash, x, y, pxPerWorld])
}

function paintLoupe(
  brush: CanvasRenderingContext2D,
  { preview, sharp, loupe }: Pictures,
  [x, y]: Point,
  pxPerWorld: number,
): void {
  const ratio = brush.canvas.width / SIDE_PX
  brush.setTransform(ratio, 0, 0, ratio, 0, 0)
  brush.clearRect(0, 0, SIDE_PX, SIDE_PX)
  brush.imageSmoothingQuality = 'high'
  for (const picture of [preview, sharp, loupe]) {
    if (!picture) continue
    const { area, bitmap } = picture
    brush.drawImage(
      bitmap,
      LOUPE_RADIUS_PX + (area.minX - x) * pxPerWorld,
      LOUPE_RADIUS_PX + (area.minY - y) * pxPerWorld,
      (area.maxX - area.minX) * pxPerWorld,
      (area.maxY - area.minY) * pxPerWorld,
    )
  }
}

/** The line that follows the edge, as far as it comes into the loupe. */
function paintEdge(
  brush: CanvasRenderingContext2D,
  { acceptedPx, livePx }: FollowedEdge,
  [x, y]: Point,
  pxPerWorld: number,
): void {
  for (const [path, width] of [
    [acceptedPx, 3],
    [livePx, 2],
  ] as const) {
    brush.beginPath()
    for (const [u, v] of path) {
      brush.lineTo(LOUPE_RADIUS_PX + (u - x) * pxPerWorld, LOUPE_RADIUS_PX + (v - y) * pxPerWorld)
    }
    brush.lineJoin = 'round'
    brush.lineWidth = width + 2.5
    brush.strokeStyle = '#fdfbf6'
    brush.stroke()
    brush.lineWidth = width
    brush.strokeStyle = '#1c4c78'
    brush.stroke()
  }
}

function paintCross(brush: CanvasRenderingContext2D): void {
  brush.beginPath()
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    brush.moveTo(LOUPE_RADIUS_PX + 5 * dx, LOUPE_RADIUS_PX + 5 * dy)
    brush.lineTo(LOUPE_RADIUS_PX + 26 * dx, LOUPE_RADIUS_PX + 26 * dy)
  }
  brush.lineWidth = 4
  brush.strokeStyle = '#fdfbf6'
  brush.stroke()
  brush.lineWidth = 1.75
  brush.strokeStyle = '#211d18'
  brush.stroke()
}
