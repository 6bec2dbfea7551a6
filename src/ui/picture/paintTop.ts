import type { Isometry, Region, Ring } from '../../core/geometry'
import type { PictureScene } from './pictureScene'
import { resinColours, type ResinLook } from './resinLook'
import type { SlabGrain } from './slabGrain'

export interface TopPlace {
  /** Top-left corner of the finished top on the canvas, px. */
  readonly xPx: number
  readonly yPx: number
  readonly pxPerMm: number
}

type Canvas = CanvasRenderingContext2D

/** Shade of the wood's edge in the resin, and of the top on the ground, mm. */
const EDGE_SHADE_MM = 9
const GROUND_SHADE_MM = 22
const SWIRLS = 46

function path(rings: readonly Ring[]): Path2D {
  const lines = new Path2D()
  for (const ring of rings) {
    ring.forEach(([x, y], k) => (k === 0 ? lines.moveTo(x, y) : lines.lineTo(x, y)))
    lines.closePath()
  }
  return lines
}

const regionPath = (regions: readonly Region[]): Path2D =>
  path(regions.flatMap(({ outer, holes }) => [outer, ...holes]))

/** Moves the pen from the slab's frame into the table's: turned over first, then turned, then moved. */
function placePen(pen: Canvas, { xMm, yMm, angleRad, turnedOver }: Isometry): void {
  pen.translate(xMm, yMm)
  pen.rotate(angleRad)
  if (turnedOver) pen.scale(1, -1)
}

/** Bands of light in pearl resin. Drawn from sines: the same plan gives the same picture. */
function paintSwirls(pen: Canvas, { bounds }: PictureScene, light: string, deep: string): void {
  const width = bounds.maxX - bounds.minX
  const height = bounds.maxY - bounds.minY
  for (let k = 0; k < SWIRLS; k++) {
    const y = bounds.minY + (height * (k + 0.5)) / SWIRLS
    const [a, b] = [Math.sin(k * 2.4) * height * 0.08, Math.sin(k * 1.7 + 1) * height * 0.08]
    pen.beginPath()
    pen.moveTo(bounds.minX, y)
    pen.bezierCurveTo(
      bounds.minX + width * 0.33,
      y + a,
      bounds.minX + width * 0.66,
      y + b,
      bounds.maxX,
      y + a - b,
    )
    pen.globalAlpha = 0.1 + 0.08 * Math.sin(k * 3.1) ** 2
    pen.strokeStyle = k % 3 === 0 ? deep : light
    pen.lineWidth = height * (0.012 + 0.02 * Math.sin(k * 0.9) ** 2)
    pen.stroke()
  }
  pen.globalAlpha = 1
}

/** Resin over the whole top; the wood is laid over it. Light falls in from the far side. */
function paintResin(pen: Canvas, scene: PictureScene, look: ResinLook): void {
  const { bounds } = scene
  const { face, light, deep } = resinColours(look)
  pen.fillStyle = face
  pen.fill(path([scene.finished]))
  if (look.kind === 'pearl') paintSwirls(pen, scene, light, deep)
  const shine = pen.createLinearGradient(bounds.minX, bounds.minY, bounds.maxX, bounds.maxY)
  shine.addColorStop(0, 'rgb(255 255 255 / 0.2)')
  shine.addColorStop(0.4, 'rgb(255 255 255 / 0)')
  shine.addColorStop(1, 'rgb(0 0 0 / 0.14)')
  pen.fillStyle = shine
  pen.fill(path([scene.finished]))
}

/** The wood stands in the resin: its edge darkens what lies beside it. */
function paintDepth(pen: Canvas, scene: PictureScene, look: ResinLook): void {
  const { deep } = resinColours(look)
  const edges = regionPath(scene.wood.flatMap(({ regions }) => regions))
  pen.strokeStyle = deep
  pen.lineJoin = 'round'
  const steps = look.kind === 'opaque' || look.kind === 'pearl' ? 2 : 5
  for (let k = steps; k > 0; k--) {
    pen.globalAlpha = 0.16
    pen.lineWidth = (2 * EDGE_SHADE_MM * k) / steps
    pen.stroke(edges)
  }
  pen.globalAlpha = 1
}

function paintWood(pen: Canvas, scene: PictureScene, grains: ReadonlyMap<string, SlabGrain>): void {
  for (const { slabId, regions, toTable } of scene.wood) {
    pen.save()
    const wood = regionPath(regions)
    pen.fillStyle = '#a07b52'
    pen.fill(wood, 'evenodd')
    pen.clip(wood, 'evenodd')
    placePen(pen, toTable)
    const grain = grains.get(slabId)
    if (grain !== undefined) {
      const { minXMm, minYMm, maxXMm, maxYMm } = grain.window
      pen.drawImage(grain.bitmap, minXMm, minYMm, maxXMm - minXMm, maxYMm - minYMm)
    }
    pen.restore()
  }
}

/** Paints the finished top: resin, wood with its own grain, trimmed to its outline, with its shade on the ground. */
export function paintTop(
  pen: Canvas,
  scene: PictureScene,
  {
    grains,
    look,
    place,
  }: {
    readonly grains: ReadonlyMap<string, SlabGrain>
    readonly look: ResinLook
    readonly place: TopPlace
  },
): void {
  const { bounds } = scene
  pen.save()
  pen.translate(place.xPx, place.yPx)
  pen.scale(place.pxPerMm, place.pxPerMm)
  pen.translate(-bounds.minX, -bounds.minY)
  pen.imageSmoothingQuality = 'high'
  const outline = path([scene.finished])
  pen.save()
  pen.shadowColor = 'rgb(0 0 0 / 0.35)'
  // Shadows are measured in px of the canvas, whatever the pen's scale.
  pen.shadowBlur = GROUND_SHADE_MM * place.pxPerMm
  pen.shadowOffsetY = (GROUND_SHADE_MM * place.pxPerMm) / 2
  pen.fillStyle = '#5b4a38'
  pen.fill(outline)
  pen.restore()
  pen.clip(outline)
  paintResin(pen, scene, look)
  paintDepth(pen, scene, look)
  paintWood(pen, scene, grains)
  pen.strokeStyle = 'rgb(0 0 0 / 0.45)'
  pen.lineWidth = 4
  pen.stroke(outline)
  pen.restore()
}
