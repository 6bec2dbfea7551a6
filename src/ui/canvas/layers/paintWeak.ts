import { ringBounds } from '../../../core/geometry'
import { slabPoint } from '../../../core/geometry'
import { WEAK_BANDS_MM, type WeakPlaces, weakPlaces } from '../../../core/plan'
import { formatPlusMinus, type LengthDisplay } from '../../../core/units'
import type { Ink } from '../ink'
import type { Label } from '../labels'
import { readyValue } from '../../readyValue'
import { slabBounds } from '../scene'
import type { Scene } from '../tools/toolTypes'
import { type Camera, screenOf } from '../view'
import type { WorldPath } from '../worldPaths'
import { type Brush, layPaths } from './paint'

/** Worked out once for each scale: the map stays while one zooms and pans. */
const known = new WeakMap<object, WeakPlaces>()

/** The ± over the slab; null while there is no scale, or the map is not wanted. */
export function weakPlacesOf({ view, slabResult, showsWeak }: Scene): WeakPlaces | null {
  const scale = readyValue(slabResult?.scale)
  const bounds = slabBounds(slabResult)
  if (!showsWeak || view === 'table' || !scale || !bounds || !slabResult) return null
  const found = known.get(slabResult) ?? weakPlaces(scale, bounds)
  known.set(slabResult, found)
  return found
}

/** Spacing of the upright hatch by band, screen px: the closer, the weaker. The best band stays bare. */
const SPACING_PX = [0, 22, 13, 8, 5, 3.5]

/** Where the photo is weak: upright lines, closer the weaker, cell by cell. */
export function paintWeak(brush: Brush, scene: Scene, ink: Ink): void {
  const found = weakPlacesOf(scene)
  if (!found) return
  for (let band = 1; band <= WEAK_BANDS_MM.length; band++) {
    const paths = found.cells
      .filter((cell) => cell.band === band)
      .map(({ minX, minY, maxX, maxY }) =>
        [slabPoint(minX, minY), slabPoint(maxX, minY), slabPoint(maxX, maxY), slabPoint(minX, maxY)].map(
          scene.frames.worldFromSlab,
        ),
      )
      .flatMap((corners): WorldPath[] => {
        const path = corners.filter((corner) => corner !== null)
        return path.length === corners.length ? [path] : []
      })
    uprightHatch(brush, scene.camera, paths, SPACING_PX[band] ?? 4, ink)
  }
}

function uprightHatch(
  brush: Brush,
  camera: Camera,
  paths: readonly WorldPath[],
  spacingPx: number,
  ink: Ink,
): void {
  const points = paths.flat().map((point) => screenOf(camera, point))
  if (points.length === 0) return
  const { minX, minY, maxX, maxY } = ringBounds(points)
  layPaths(brush, camera, paths, true)
  brush.save()
  brush.clip()
  // Anchored to the world, so that the lines move with the picture.
  const anchor = camera.x
  const first = anchor + Math.ceil((minX - anchor) / spacingPx) * spacingPx
  for (const [colour, widthPx] of [
    [ink.paper, 3],
    [ink.ink, 1.2],
  ] as const) {
    brush.beginPath()
    for (let x = first; x <= maxX; x += spacingPx) {
      brush.moveTo(x, minY)
      brush.lineTo(x, maxY)
    }
    brush.strokeStyle = colour
    brush.lineWidth = widthPx
    brush.globalAlpha = colour === ink.paper ? 0.55 : 0.9
    brush.stroke()
  }
  brush.restore()
}

/** The ± itself at a few places. */
export function weakLabels(scene: Scene, display: LengthDisplay, rank: number): readonly Label[] {
  return (weakPlacesOf(scene)?.stated ?? []).flatMap(({ at, sdMm }, n) => {
    const world = scene.frames.worldFromSlab(at)
    if (!world) return []
    return [
      {
        id: `weak/${n}`,
        text: formatPlusMinus(sdMm, 'length', display),
        at: screenOf(scene.camera, world),
        rank,
        mustStay: true,
        strong: true,
      },
    ]
  })
}
