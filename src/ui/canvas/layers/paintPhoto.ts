import type { Picture, Pictures } from '../photo/pictureStore'
import type { Scene } from '../tools/toolTypes'
import { screenLength, screenOf } from '../view'
import type { Brush } from './paint'

/** The photo as taken, or the slab from above: the small picture, and over it what is sharp already. */
export function paintPhoto(brush: Brush, scene: Scene, pictures: Pictures): void {
  if (scene.view === 'table' || pictures.hash !== scene.photo?.hash) return
  const [whole, sharp] =
    scene.view === 'photo' ? [pictures.preview, pictures.sharp] : [pictures.above, pictures.aboveSharp]
  for (const picture of [whole, sharp]) if (picture) paintPicture(brush, scene, picture)
}

function paintPicture(brush: Brush, { camera }: Scene, { bitmap, area }: Picture): void {
  const [x, y] = screenOf(camera, [area.minX, area.minY])
  const width = screenLength(camera, area.maxX - area.minX)
  const height = screenLength(camera, area.maxY - area.minY)
  // Smoothing would blur what is shown larger than it was taken: the maker wants to see the pixels then.
  brush.imageSmoothingEnabled = width < 4 * bitmap.width
  brush.imageSmoothingQuality = 'high'
  brush.drawImage(bitmap, x, y, width, height)
}
