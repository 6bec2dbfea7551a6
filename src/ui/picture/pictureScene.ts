import {
  type Bounds,
  type Isometry,
  type Region,
  type Ring,
  ringBounds,
  invertIsometry,
} from '../../core/geometry'
import type { Option, PlanResult, Slab } from '../../core/plan'
import { readyValue } from '../readyValue'

/** A part of the top that shows a slab's own grain. */
export interface WoodPart {
  readonly slabId: string
  readonly regions: readonly Region[]
  /** From the slab's frame to the table's. */
  readonly toTable: Isometry
}

/** What the finished top shows, in the table's frame, mm. */
export interface PictureScene {
  readonly name: string
  readonly finished: Ring
  readonly bounds: Bounds
  readonly wood: readonly WoodPart[]
}

/** The top of an option as it will look; null while its wood is not worked out. */
export function pictureScene(option: Option, result: PlanResult): PictureScene | null {
  const own = result.options.get(option.id)
  const footprint = readyValue(own?.footprint)
  const coverage = readyValue(own?.coverage)
  if (option.footprint === null || !footprint || !coverage) return null
  const { slabId, pose } = option.footprint
  const main: WoodPart = { slabId, regions: coverage.mainWood, toTable: invertIsometry(pose) }
  const placed = coverage.placed.flatMap(({ placementId, inBlank }): readonly WoodPart[] => {
    const placement = option.placements.find(({ id }) => id === placementId)
    const piece = option.pieces.find(({ id }) => id === placement?.pieceId)
    return placement && piece ? [{ slabId: piece.slabId, regions: inBlank, toTable: placement.pose }] : []
  })
  const { finished } = footprint
  return { name: option.name, finished, bounds: ringBounds(finished), wood: [main, ...placed] }
}

/** The slabs that options show, each once, with the photo that their grain is taken from. */
export function slabsShown(
  scenes: readonly PictureScene[],
  slabs: readonly Slab[],
): readonly { readonly slab: Slab; readonly hash: string }[] {
  const ids = new Set(scenes.flatMap(({ wood }) => wood.map(({ slabId }) => slabId)))
  return slabs.flatMap((slab) => {
    if (!ids.has(slab.id) || slab.capture.kind !== 'photo') return []
    const photo = slab.capture.photos[0]
    return photo === undefined ? [] : [{ slab, hash: photo.hash }]
  })
}
