import { type Point, type PxPoint, simplifyRing } from '../../core/geometry'
import type { Trace } from '../../core/plan'
import { redrawnStretch } from '../../core/trace'
import { addTrace, replaceTraceRing, setOutline } from '../../state/commands'
import {
  closeEdge,
  dropEdge,
  endEdge,
  leadEdge,
  pinEdge,
  startEdge,
  takeBackEdge,
} from '../../state/followDesk'
import { newId } from '../../state/newId'
import { run } from '../../state/run'
import { sessionStore, setSelection } from '../../state/sessionStore'
import {
  addStroke,
  chooseProposedVoid,
  dropProposedVoid,
  findVoids,
  forgetProposedVoids,
  forgetStrokes,
  takeBackStroke,
} from '../../state/traceDesk'
import { type TracedPhoto, tracingStore } from '../../state/tracingStore'
import { announce } from '../a11y/announce'
import { t } from '../text/t'
import { currentScene } from './currentScene'
import { tracesOf } from './handles'
import { aimedPx } from './tools/aim'
import type { TraceOrder } from './tools/traceOrder'
import type { Scene } from './tools/toolTypes'
import { worldOf } from './view'

/** Names of the ways in which lines are found, kept with each line: raised when a way finds other lines than before. */
const STROKES_METHOD = 'colour-cut-1'
const FOLLOW_METHOD = 'least-cost-1'
/** So far a drawn line's points may be thinned without any loss that shows, px. */
const THINNED_PX = 0.5
const VOIDS_METHOD = 'dark-places-1'

/** The pointer or the cross moved over the photo: a line that is being drawn is led there. */
export const leadTo = (world: Point): void => leadAlong(() => world)

/** The browser hands out one move a frame: the line is asked for at once, without waiting for the next. */
export const leadToScreen = (at: Point): void => leadAlong(({ camera }) => worldOf(camera, at))

function leadAlong(worldIn: (scene: Scene) => Point): void {
  if (tracingStore.getState().edge === null) return
  const scene = currentScene()
  const world = worldIn(scene)
  const at = scene.view === 'photo' ? aimedPx(world, scene) : null
  if (at && scene.tracing.edge?.meaning === scene.tool) leadEdge(at, !scene.followsEdge)
}

const tracedPhoto = ({ slab, photo }: Pick<Scene, 'slab' | 'photo'>): TracedPhoto | null =>
  slab && photo && { slabId: slab.id, photoId: photo.id, hash: photo.hash }

/** Does what a tool asked of the tracing worker's desk. */
export function carryOut(order: TraceOrder, scene: Scene): void {
  const photo = tracedPhoto(scene)
  if (photo === null) return
  switch (order.kind) {
    case 'stroke':
      return addStroke(photo, order.stroke)
    case 'take-back-stroke':
      takeBackStroke()
      return
    case 'accept-outline':
      return acceptOutline()
    case 'push-size':
      return sizePush(order.factor)
    case 'choose-void':
      return chooseProposedVoid(order.id)
    case 'accept-void':
      return acceptVoid(order.id)
    case 'drop-void':
      return declineVoid(order.id)
    default:
      return carryOutEdge(order, photo, scene)
  }
}

function carryOutEdge(
  order: Extract<TraceOrder, { kind: `${string}-edge` }>,
  photo: TracedPhoto,
  scene: Scene,
): void {
  const isStraight = !scene.followsEdge
  switch (order.kind) {
    case 'start-edge':
      return startEdge(photo, lineMeaning(scene), order.at, order.before)
    case 'lead-edge':
      return leadEdge(order.at, isStraight)
    case 'pin-edge':
      return pinEdge(order.at, isStraight)
    case 'take-back-edge':
      return takeBackEdge()
    case 'close-edge':
      void closeLine(photo, scene.tool === 'void' ? 'void' : 'outline', isStraight)
      return
    case 'drop-edge':
      return dropEdge()
    case 'redraw-edge':
      void redraw(photo, order.traceId, order.at, isStraight)
      return
  }
}

/** What the line will be is told by the tool that draws it. */
const lineMeaning = ({ tool }: Scene): 'outline' | 'void' | 'redraw' =>
  tool === 'void' || tool === 'redraw' ? tool : 'outline'

/** Limits of the pushing tool's radius, CSS px: a fingertip's half, and a third of a phone's width. */
export const PUSH_RADIUS_PX = { least: 10, most: 120 } as const

const sizePush = (factor: number): void =>
  sessionStore.setState(({ pushRadiusPx }) => ({
    pushRadiusPx: Math.round(
      Math.min(PUSH_RADIUS_PX.most, Math.max(PUSH_RADIUS_PX.least, pushRadiusPx * factor)),
    ),
  }))

/** The drawn line takes the place of the stretch of a trace between its ends: one step. */
async function redraw(
  { slabId }: TracedPhoto,
  traceId: string,
  at: PxPoint,
  isStraight: boolean,
): Promise<void> {
  const path = await endEdge(at, isStraight)
  const trace = tracesOf(currentScene()).find(({ id }) => id === traceId)
  if (trace === undefined || path.length < 2) return
  const mended = redrawnStretch(trace.ringPx, path)
  if (!mended.ok) return announce(t('say-edge-would-cross'))
  run(replaceTraceRing, { slabId, traceId, ringPx: simplifyRing(mended.value, THINNED_PX) })
  announce(t('say-edge-mended'))
}

/** Puts the proposed outline into the plan, in the place of the one that was there: one step. */
export function acceptOutline(): void {
  const { photo, outlinePx, strokes, isFindingOutline } = tracingStore.getState()
  if (photo === null || outlinePx === null || isFindingOutline) return
  const traceId = outlineIdOn(photo) ?? newId()
  forgetStrokes()
  run(setOutline, {
    slabId: photo.slabId,
    photoId: photo.photoId,
    traceId,
    ringPx: outlinePx,
    origin: { kind: 'strokes', method: STROKES_METHOD, strokes },
  })
  sessionStore.setState({ tool: 'select', selection: { kind: 'trace', traceId, point: null } })
  announce(t('say-outline-accepted', { points: outlinePx.length }))
}

/** Lets the proposed outline go: the plan is as it was. */
export function discardOutline(): void {
  forgetStrokes()
  sessionStore.setState({ tool: 'select' })
  announce(t('say-outline-discarded'))
}

const outlineIdOn = ({ photoId }: TracedPhoto): string | null =>
  tracesOf(currentScene()).find((trace) => trace.photoId === photoId && trace.meaning.kind === 'outline')
    ?.id ?? null

/** Looks for holes and cracks within the outline, and takes up the tool that judges them. */
export async function proposeVoids(): Promise<void> {
  const scene = currentScene()
  const photo = tracedPhoto(scene)
  const traces = tracesOf(scene)
  const outline = traces.find(({ meaning }) => meaning.kind === 'outline')
  if (photo === null || outline === undefined) return
  const known = traces.filter((trace) => trace !== outline).map(({ ringPx }) => ringPx)
  await findVoids(photo, outline.ringPx, known)
  const { voids } = tracingStore.getState()
  if (voids === null) return
  announce(t('say-voids-proposed', { count: voids.length }))
  if (voids.length > 0) sessionStore.setState({ tool: 'proposals', view: 'photo', stage: 'trace' })
}

const proposedVoid = (id: string) => tracingStore.getState().voids?.find((proposed) => proposed.id === id)

/** One proposal becomes a void of the plan: one step. */
export function acceptVoid(id: string): void {
  const { photo } = tracingStore.getState()
  const proposed = proposedVoid(id)
  if (photo === null || proposed === undefined) return
  dropProposedVoid(id)
  run(addTrace, {
    slabId: photo.slabId,
    photoId: photo.photoId,
    traceId: newId(),
    meaning: meaningOf(proposed.kind),
    ringPx: proposed.ringPx,
    origin: { kind: 'proposed', method: VOIDS_METHOD },
  })
  judged('say-void-accepted')
}

const meaningOf = (kind: 'void' | 'crack'): Trace['meaning'] => ({ kind, depth: { kind: 'through' } })

/** One proposal goes. */
export function declineVoid(id: string): void {
  if (proposedVoid(id) === undefined) return
  dropProposedVoid(id)
  judged('say-void-declined')
}

/** All that are left go. */
export function declineAllVoids(): void {
  forgetProposedVoids()
  if (sessionStore.getState().tool === 'proposals') sessionStore.setState({ tool: 'select' })
}

/** After the last one the tool is laid down. */
function judged(said: 'say-void-accepted' | 'say-void-declined'): void {
  const left = tracingStore.getState().voids?.length ?? 0
  announce(t(said, { left }))
  if (left === 0) declineAllVoids()
}

async function closeLine(
  photo: TracedPhoto,
  meaning: 'outline' | 'void',
  isStraight: boolean,
): Promise<void> {
  const ringPx = await closeEdge(isStraight)
  if (ringPx === null) return announce(t('say-points-missing', { count: 1 }))
  const origin = { kind: 'follow', method: FOLLOW_METHOD } as const
  const { slabId, photoId } = photo
  const traceId = (meaning === 'outline' ? outlineIdOn(photo) : null) ?? newId()
  if (meaning === 'outline') run(setOutline, { slabId, photoId, traceId, ringPx, origin })
  else {
    const depth = { kind: 'through' } as const
    run(addTrace, { slabId, photoId, traceId, meaning: { kind: 'void', depth }, ringPx, origin })
  }
  setSelection({ kind: 'trace', traceId, point: null })
  announce(t('say-trace-closed', { points: ringPx.length }))
}
