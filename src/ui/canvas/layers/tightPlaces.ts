import { midpoint, type Point, type TablePoint } from '../../../core/geometry'
import { formatLength, type LengthDisplay } from '../../../core/units'
import { readyValue } from '../../readyValue'
import { t } from '../../text/t'
import type { Ink } from '../ink'
import type { Label } from '../labels'
import type { Scene } from '../tools/toolTypes'
import { screenOf } from '../view'
import { type Brush, dimensionLine, disc, stroke } from './paint'

/** What stops the table from going further: where wood is short on each side, else where least is to spare. */
interface TightPlace {
  readonly id: string
  readonly from: Point
  readonly to: Point
  readonly lengthMm: number
  readonly isShort: boolean
}

const SHOWN_AT: ReadonlySet<Scene['stage']> = new Set<Scene['stage']>(['slabs', 'table'])

/** More would hide the wood. */
const MOST_SHOWN = 2

/** The tight places of the table on this slab, the tightest first, on screen; none where they would be in the way. */
export function tightPlacesOf(scene: Scene): readonly TightPlace[] {
  const coverage = readyValue(scene.optionResult?.coverage)
  const laid = readyValue(scene.optionResult?.footprint)
  const isShown = scene.view === 'above' && SHOWN_AT.has(scene.stage) && laid?.slabId === scene.slab?.id
  if (!isShown || coverage === null) return []
  const { spare, sideGaps } = coverage
  const short = sideGaps
    .slice(0, MOST_SHOWN)
    .flatMap(({ side, deepest, greatestDepthMm }) =>
      placeOf(scene, `tight/${side}`, deepest, greatestDepthMm, true),
    )
  return spare === null
    ? short
    : placeOf(scene, 'tight/spare', [spare.onTable, spare.onEdge], spare.distanceMm, false)
}

function placeOf(
  { frames, camera }: Scene,
  id: string,
  [onTable, onWood]: readonly [TablePoint, TablePoint],
  lengthMm: number,
  isShort: boolean,
): readonly TightPlace[] {
  const [from, to] = [frames.worldFromTable(onTable), frames.worldFromTable(onWood)]
  if (!from || !to) return []
  return [{ id, from: screenOf(camera, from), to: screenOf(camera, to), lengthMm, isShort }]
}

const RING_PX = 8
const PLATE_OFF_PX = 24

/** A line from table to wood; shorter than its ring, the ring alone tells where. */
export function paintTightPlaces(brush: Brush, scene: Scene, ink: Ink): void {
  for (const { from, to } of tightPlacesOf(scene)) {
    dimensionLine(brush, from, to, { colour: ink.accent, widthPx: 2 * ink.weight, halo: ink.paper })
    disc(brush, midpoint(from, to), RING_PX)
    stroke(brush, { colour: ink.accent, widthPx: 2 * ink.weight, halo: ink.paper })
  }
}

/** By how much, beside each place. */
export function tightLabels(scene: Scene, display: LengthDisplay, rank: number): readonly Label[] {
  return tightPlacesOf(scene).map(({ id, from, to, lengthMm, isShort }) => {
    const [x, y] = midpoint(from, to)
    const length = formatLength(lengthMm, display)
    return {
      id,
      text: t(isShort ? 'canvas-short' : 'canvas-spare', { length }),
      at: [x, y - PLATE_OFF_PX],
      rank,
      mustStay: true,
      strong: true,
    }
  })
}
