import type { Bounds, Isometry, Point } from '../../core/geometry'
import { pxPoint, ringBounds } from '../../core/geometry'
import { slabPointFromPx } from '../../core/photo'
import type {
  Option,
  OptionResult,
  Photo,
  Plan,
  PlanResult,
  Slab,
  SlabResult,
  SlabScaleResult,
} from '../../core/plan'
import { type SessionState, wholeBoard, wholeRule } from '../../state/sessionStore'
import { readyValue } from '../readyValue'
import { framesOf } from './frames'
import { layTray } from './tray'
import type { Scene } from './tools/toolTypes'
import { type Camera, fitCamera, type Insets, type Size } from './view'

/** The session's slab, else the first; so too with the option. */
export const slabOf = (plan: Plan, session: Pick<SessionState, 'slabId'>): Slab | null =>
  plan.slabs.find(({ id }) => id === session.slabId) ?? plan.slabs[0] ?? null

export const optionOf = (plan: Plan, session: Pick<SessionState, 'optionId'>): Option | null =>
  plan.options.find(({ id }) => id === session.optionId) ?? plan.options[0] ?? null

/** The session's photo where it is one of the slab's, else its first. */
export function photoOf(slab: Slab | null, { photoId }: Pick<SessionState, 'photoId'>): Photo | null {
  if (slab?.capture.kind !== 'photo') return null
  const { photos } = slab.capture
  return photos.find(({ id }) => id === photoId) ?? photos[0] ?? null
}

/** The slab's results as the photo that is looked at sees it: its camera in the place of the first one's. */
function seenOn(result: SlabResult | null, photo: Photo | null): SlabResult | null {
  const scale = photo && result?.laterPhotos.get(photo.id)
  return result && scale ? { ...result, scale } : result
}

/** Pose of the table on this slab; null when it lies on none or on another. */
export const footprintPoseOn = (option: Option | null, slab: Slab | null): Isometry | null =>
  option?.footprint && slab && option.footprint.slabId === slab.id ? option.footprint.pose : null

type SceneSession = Pick<
  SessionState,
  | 'slabId'
  | 'photoId'
  | 'optionId'
  | 'stage'
  | 'view'
  | 'tool'
  | 'selection'
  | 'boardSize'
  | 'ruleSize'
  | 'showsWeak'
  | 'followsEdge'
  | 'pushRadiusPx'
>

/** What is on the bench, before it is put on screen. */
export type SceneModel = Omit<Scene, 'camera' | 'size' | 'tracing'>

export function sceneModel(
  plan: Plan,
  result: PlanResult,
  session: SceneSession,
  newId: () => string,
): SceneModel {
  const slab = slabOf(plan, session)
  const option = optionOf(plan, session)
  const photo = photoOf(slab, session)
  const slabResult = seenOn((slab && result.slabs.get(slab.id)) ?? null, photo)
  const optionResult = (option && result.options.get(option.id)) ?? null
  const pose = footprintPoseOn(option, slab)
  return {
    plan,
    slab,
    photo,
    option,
    slabResult,
    optionResult,
    stage: session.stage,
    view: session.view,
    tool: session.tool,
    frames: framesOf(session.view, readyValue(slabResult?.scale), pose),
    selection: session.selection,
    tray: session.view === 'table' ? trayOf(optionResult, pose) : [],
    boardSize: wholeBoard(session.boardSize),
    ruleSize: wholeRule(session.ruleSize),
    showsWeak: session.showsWeak,
    followsEdge: session.followsEdge,
    pushRadiusPx: session.pushRadiusPx,
    newId,
  }
}

function trayOf(optionResult: OptionResult | null, pose: Isometry | null): Scene['tray'] {
  const pieces = readyValue(optionResult?.pieces)
  const footprint = readyValue(optionResult?.footprint)
  return pieces && footprint && pose ? layTray(pieces.pieces, footprint.blank, pose) : []
}

/** What "fit" shows; null when the view has nothing to show yet. */
export function contentBounds(model: SceneModel): Bounds | null {
  switch (model.view) {
    case 'photo':
      return model.photo && { minX: 0, minY: 0, maxX: model.photo.widthPx, maxY: model.photo.heightPx }
    case 'above':
      return slabBounds(model.slabResult)
    case 'table':
      return tableBounds(model)
  }
}

/** How much further than the marks reach the slab may go, as a share of their spread, until it is traced. */
const AROUND_MARKS_SHARE = 1.5

/** What is shown from above: the slab; until it is traced, all of the photo that it may lie in. */
export function slabBounds(slabResult: SlabResult | null): Bounds | null {
  const shape = readyValue(slabResult?.shape)
  if (shape) return ringBounds(shape.outline)
  const scale = readyValue(slabResult?.scale)
  return scale && scale.markPositions.length > 0 ? boundsAroundMarks(scale) : null
}

function grown({ minX, minY, maxX, maxY }: Bounds, share: number): Bounds {
  const by = share * Math.max(maxX - minX, maxY - minY)
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by }
}

/** The photo is looked at in a grid of this many steps each way. */
const GRID_STEPS = 24

/** What the photo shows of the slab's plane within reach of the marks: towards the horizon it has no end. */
function boundsAroundMarks({ markPositions, frame }: SlabScaleResult): Bounds {
  const marks = markPositions.map(({ at }) => at)
  const reach = grown(ringBounds(marks), AROUND_MARKS_SHARE)
  const [midX, midY] = frame.camera.lens.centrePx
  const steps = Array.from({ length: GRID_STEPS + 1 }, (_, n) => (2 * n) / GRID_STEPS)
  const seen = steps.flatMap((x) =>
    steps.map((y) => slabPointFromPx(frame, pxPoint(x * midX, y * midY))).filter((at) => isWithin(at, reach)),
  )
  return ringBounds([...marks, ...seen])
}

/** Points above the horizon are no numbers, and lie nowhere. */
const isWithin = ([x, y]: Point, { minX, minY, maxX, maxY }: Bounds): boolean =>
  x >= minX && x <= maxX && y >= minY && y <= maxY

function tableBounds({ optionResult, tray }: SceneModel): Bounds | null {
  const footprint = readyValue(optionResult?.footprint)
  if (!footprint) return null
  return ringBounds([...footprint.blank, ...tray.flatMap(({ region }) => region.outer)])
}

const PHOTO_INSETS: Insets = { top: 60, bottom: 60, sides: 16 }
/** With room for dimension lines. */
const DRAWING_INSETS: Insets = { top: 96, bottom: 76, sides: 60 }

/** A camera for a model that has not been zoomed by hand. */
export function startingCamera(model: SceneModel, size: Size): Camera {
  const bounds = contentBounds(model)
  if (!bounds) return { scale: 1, x: 0, y: 0 }
  return fitCamera(bounds, size, model.view === 'photo' ? PHOTO_INSETS : DRAWING_INSETS)
}
