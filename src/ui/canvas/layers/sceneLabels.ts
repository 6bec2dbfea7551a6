import { type Point, pointDistanceMm, ringBounds, tablePoint } from '../../../core/geometry'
import type { SetOutCut } from '../../../core/plan'
import { formatLength, type LengthDisplay } from '../../../core/units'
import { offsetText } from '../../text/offsetText'
import { t } from '../../text/t'
import { handlesOf, tracesOf, traceLabel } from '../handles'
import type { Label } from '../labels'
import { readyValue } from '../../readyValue'
import { weakLabels } from './paintWeak'
import { tightLabels } from './tightPlaces'
import type { Handle, Scene } from '../tools/toolTypes'
import { screenOf } from '../view'

/** Which plates win where there is no room for all. */
const RANK = {
  tight: 12,
  weak: 11,
  station: 10,
  cut: 9,
  size: 8,
  mark: 7,
  piece: 5,
  void: 3,
  datum: 2,
  slab: 1,
} as const

/** A dimension on screen: its line and the length it states. */
export interface Dimension {
  readonly id: string
  readonly from: Point
  readonly to: Point
  readonly lengthMm: number
  readonly rank: number
}

/** How far outside what it measures a dimension line runs, screen px. */
const DIMENSION_OFF_PX = 26
/** A mark's plate stands off, so that the mark itself stays in sight. */
const MARK_PLATE_OFF: Point = [17, -17]
/** A void's plate stands over it: its outline stays free to be traced. */
const VOID_PLATE_OFF_PX = 16
/** Smaller on screen, a void goes without its plate. */
const LEAST_LABELLED_PX = 12

/** Every plate that this view wants to show. */
export function sceneLabels(scene: Scene, display: LengthDisplay): readonly Label[] {
  return [
    ...handlesOf(scene).flatMap((handle) => handleLabel(handle, scene, display)),
    ...voidLabels(scene),
    ...stationLabels(scene, display),
    ...trayLabel(scene),
    ...weakLabels(scene, display, RANK.weak),
    ...tightLabels(scene, display, RANK.tight),
    ...dimensionsOf(scene).map(({ id, from, to, lengthMm, rank }) => ({
      ...plain,
      id,
      rank,
      text: formatLength(lengthMm, display),
      at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const,
    })),
  ]
}

const plain = { mustStay: false, strong: false } as const

/** The table, its cuts and pieces wear their plates once the work has come to them: tracing needs the wood in sight. */
const BEFORE_THE_TABLE: ReadonlySet<Scene['stage']> = new Set<Scene['stage']>(['photo', 'scale', 'trace'])
const OF_THE_TABLE: ReadonlySet<Handle['kind']> = new Set<Handle['kind']>([
  'cut',
  'piece',
  'placement',
  'footprint',
])

function handleLabel(handle: Handle, scene: Scene, display: LengthDisplay): readonly Label[] {
  const { id, kind, screen } = handle
  if (BEFORE_THE_TABLE.has(scene.stage) && OF_THE_TABLE.has(kind)) return []
  const label = (text: string, rank: number, at: Point = screen): Label => ({ ...plain, id, text, rank, at })
  switch (kind) {
    case 'mark':
      return [
        {
          ...label(markName(handle, scene), RANK.mark, offBy(screen, MARK_PLATE_OFF)),
          mustStay: scene.view === 'photo',
        },
      ]
    case 'cut':
      return [{ ...label(cutNumber(handle, scene), RANK.cut), strong: true }]
    case 'piece':
      return isMainWood(handle, scene) ? [] : [label(handle.label, RANK.piece)]
    case 'placement':
      return [label(handle.label, RANK.piece)]
    case 'footprint':
      return tableSizeLabel(handle, scene, display)
    case 'datumEnd':
      return datumLabel(handle)
    default:
      return []
  }
}

const datumLabel = ({ id, screen }: Handle): readonly Label[] =>
  id === 'datum/from'
    ? [{ ...plain, id, text: t('canvas-datum'), rank: RANK.datum, at: offBy(screen, [0, 20]) }]
    : []

const offBy = ([x, y]: Point, [dx, dy]: Point): Point => [x + dx, y + dy]

/** A board's corners go by their number alone: the board lies there for all to see. */
function markName({ selection }: Handle, { slab }: Scene): string {
  if (selection?.kind !== 'mark') return ''
  const corner = slab?.boards
    .map(({ cornerIds }) => cornerIds.indexOf(selection.markId))
    .find((index) => index !== -1)
  if (corner !== undefined) return String(corner + 1)
  return slab?.marks.find(({ id }) => id === selection.markId)?.name ?? ''
}

const piecesOf = (scene: Scene) => readyValue(scene.optionResult?.pieces)

function cutNumber({ selection }: Handle, scene: Scene): string {
  const cut =
    selection?.kind === 'cut' && piecesOf(scene)?.cuts.find(({ cutId }) => cutId === selection.cutId)
  return cut ? String(cut.number) : ''
}

const isMainWood = ({ selection }: Handle, scene: Scene): boolean =>
  selection?.kind === 'piece' &&
  piecesOf(scene)?.pieces.find(({ key }) => key === selection.key)?.use === 'table'

function tableSizeLabel({ id, screen }: Handle, scene: Scene, display: LengthDisplay): readonly Label[] {
  const laid = readyValue(scene.optionResult?.footprint)
  if (!laid || scene.view !== 'photo') return []
  const text = t('canvas-table-size', {
    length: formatLength(laid.finishedLengthMm, display),
    width: formatLength(laid.finishedWidthMm, display),
  })
  return [{ ...plain, id, text, rank: RANK.size, at: screen }]
}

function voidLabels(scene: Scene): readonly Label[] {
  if (scene.view === 'table') return []
  const traces = tracesOf(scene)
  return traces.flatMap((trace) => {
    if (trace.meaning.kind !== 'void' || trace.ringPx.length === 0) return []
    const path = trace.ringPx.map((px) => scene.frames.worldFromPx(px)).filter((point) => point !== null)
    if (path.length === 0) return []
    const { minX, maxX, minY, maxY } = ringBounds(path.map((point) => screenOf(scene.camera, point)))
    if (Math.max(maxX - minX, maxY - minY) < LEAST_LABELLED_PX) return []
    const at: Point = [(minX + maxX) / 2, minY - VOID_PLATE_OFF_PX]
    return [{ ...plain, id: `void/${trace.id}`, text: traceLabel(traces, trace), rank: RANK.void, at }]
  })
}

/** How far the tray's caption stands from the tray's corner, screen px. */
const TRAY_CAPTION_OFF: Point = [72, -22]

function trayLabel({ tray, camera }: Scene): readonly Label[] {
  if (tray.length === 0) return []
  const { minX, minY } = ringBounds(tray.flatMap(({ region }) => region.outer))
  const at = offBy(screenOf(camera, [minX, minY]), TRAY_CAPTION_OFF)
  return [{ ...plain, id: 'tray', text: t('canvas-tray'), rank: RANK.slab, at }]
}

/** Stations and offsets at both ends of the selected cut. */
function stationLabels(scene: Scene, display: LengthDisplay): readonly Label[] {
  const { selection } = scene
  const cut =
    selection?.kind === 'cut' && scene.view === 'above'
      ? piecesOf(scene)?.cuts.find(({ cutId }) => cutId === selection.cutId)
      : undefined
  return cut
    ? [stationLabel('from', cut, scene, display), stationLabel('to', cut, scene, display)].flat()
    : []
}

function stationLabel(
  end: 'from' | 'to',
  cut: SetOutCut,
  scene: Scene,
  display: LengthDisplay,
): readonly Label[] {
  const station = cut[end]
  const world = scene.frames.worldFromSlab(station.at)
  if (!world) return []
  const text = t('canvas-cut-end', {
    along: formatLength(station.alongMm, display),
    offset: offsetText(station.offsetMm, { length: (mm) => formatLength(mm, display) }),
  })
  const [x, y] = screenOf(scene.camera, world)
  return [{ ...plain, id: `station/${end}`, text, rank: RANK.station, mustStay: true, at: [x, y - 16] }]
}

/** Length and width of the finished table, and from above those of the slab. */
export function dimensionsOf(scene: Scene): readonly Dimension[] {
  if (scene.view === 'photo') return []
  return [...tableDimensions(scene), ...slabDimensions(scene)]
}

function tableDimensions(scene: Scene): readonly Dimension[] {
  const laid = readyValue(scene.optionResult?.footprint)
  if (!laid || laid.slabId !== scene.slab?.id) return []
  const { minX, minY, maxX, maxY } = ringBounds(laid.finished)
  const box = ringBounds(laid.blank)
  const screen = (x: number, y: number): Point | null => {
    const world = scene.frames.worldFromTable(tablePoint(x, y))
    return world && screenOf(scene.camera, world)
  }
  const corner = screen(minX, box.minY)
  const end = screen(maxX, box.minY)
  const startFar = screen(box.minX, minY)
  const startNear = screen(box.minX, maxY)
  if (!corner || !end || !startFar || !startNear) return []
  const away = awayFrom(corner, end, startFar, startNear)
  return [
    { id: 'table-length', ...shifted(corner, end, away.far), lengthMm: maxX - minX, rank: RANK.size },
    {
      id: 'table-width',
      ...shifted(startFar, startNear, away.start),
      lengthMm: maxY - minY,
      rank: RANK.size,
    },
  ]
}

/** Steps on screen that lead out of the table over its far side and over its start. */
function awayFrom(
  corner: Point,
  end: Point,
  startFar: Point,
  startNear: Point,
): { far: Point; start: Point } {
  return {
    far: stepAlong(startNear, startFar),
    start: stepAlong(end, corner),
  }
}

function stepAlong(from: Point, to: Point): Point {
  const length = Math.max(1, pointDistanceMm(from, to))
  return [((to[0] - from[0]) / length) * DIMENSION_OFF_PX, ((to[1] - from[1]) / length) * DIMENSION_OFF_PX]
}

const shifted = (from: Point, to: Point, step: Point): { from: Point; to: Point } => ({
  from: offBy(from, step),
  to: offBy(to, step),
})

function slabDimensions(scene: Scene): readonly Dimension[] {
  const shape = readyValue(scene.slabResult?.shape)
  if (!shape || scene.view !== 'above') return []
  const { minX, maxX, minY, maxY } = ringBounds(shape.outline)
  const below = (x: number): Point => offBy(screenOf(scene.camera, [x, maxY]), [0, DIMENSION_OFF_PX])
  const beside = (y: number): Point => offBy(screenOf(scene.camera, [maxX, y]), [DIMENSION_OFF_PX, 0])
  return [
    { id: 'slab-length', from: below(minX), to: below(maxX), lengthMm: shape.lengthMm, rank: RANK.slab },
    { id: 'slab-width', from: beside(minY), to: beside(maxY), lengthMm: shape.widthMm, rank: RANK.slab },
  ]
}
