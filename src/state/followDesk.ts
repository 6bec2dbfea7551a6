import { type PxPoint, simplifyRing } from '../core/geometry'
import { JobProblem } from '../workers'
import type { FollowStep } from '../workers/traceProtocol'
import { newId } from './newId'
import { lookAtPhoto, photoToTrace, tellTraceProblem, traceClient } from './traceDesk'
import { type FollowedEdge, type TracedPhoto, tracingStore } from './tracingStore'

/** A line that clings to the edge has a point for each pixel; so far it may be thinned without any loss that shows, px. */
const THINNED_PX = 0.5

/** The line that is being drawn, and what is still to be asked of the worker. */
interface Line {
  readonly photo: TracedPhoto
  readonly meaning: FollowedEdge['meaning']
  id: string
  /** Drawn before the worker's own line began. */
  before: readonly PxPoint[]
  acceptedPx: readonly PxPoint[]
  readonly waiting: FollowStep[]
  isAsking: boolean
  whenDone: (() => void)[]
}

let line: Line | null = null

/** Begins a line; or goes on with one that was drawn so far by hand, whose last point is `at`. */
export function startEdge(
  photo: TracedPhoto,
  meaning: FollowedEdge['meaning'],
  at: PxPoint,
  before: readonly PxPoint[] = [],
): void {
  lookAtPhoto(photo)
  line = { photo, meaning, id: newId(), before, acceptedPx: [], waiting: [], isAsking: false, whenDone: [] }
  tracingStore.setState({ edge: { meaning, acceptedPx: [...before, at], livePx: [at] } })
  ask(line, { kind: 'start', at })
}

/** The pointer moved: of the moves that wait, only the newest counts. */
export function leadEdge(at: PxPoint, isStraight: boolean): void {
  if (line === null) return
  if (line.waiting.at(-1)?.kind === 'move') line.waiting.pop()
  ask(line, { kind: 'move', at, isStraight })
}

/** Accepts the line as far as here. */
export function pinEdge(at: PxPoint, isStraight: boolean): void {
  if (line !== null) ask(line, { kind: 'pin', at, isStraight })
}

/** Gives back the last stretch; at last the line itself. */
export function takeBackEdge(): void {
  if (line !== null) ask(line, { kind: 'takeBack' })
}

/** Lets the line go. */
export function dropEdge(): void {
  line = null
  tracingStore.setState({ edge: null })
}

/** Leads the line to its end and lets it go. @returns all of it, a point for each pixel */
export async function endEdge(at: PxPoint, isStraight: boolean): Promise<readonly PxPoint[]> {
  const own = line
  if (own === null) return []
  pinEdge(at, isStraight)
  await new Promise<void>((resolve) => own.whenDone.push(resolve))
  const path = line === own ? (tracingStore.getState().edge?.acceptedPx ?? []) : []
  dropEdge()
  return path
}

/** Leads the line back to its first point. @returns the closed ring, thinned; null when it encloses nothing */
export async function closeEdge(isStraight: boolean): Promise<readonly PxPoint[] | null> {
  const own = line
  const first = tracingStore.getState().edge?.acceptedPx[0]
  if (own === null || first === undefined) return null
  pinEdge(first, isStraight)
  await new Promise<void>((resolve) => own.whenDone.push(resolve))
  if (line !== own) return null
  const ring = (tracingStore.getState().edge?.acceptedPx ?? []).slice(0, -1)
  if (ring.length < 3) return null
  dropEdge()
  return simplifyRing(ring, THINNED_PX)
}

function ask(own: Line, step: FollowStep): void {
  own.waiting.push(step)
  if (!own.isAsking) void askOn(own)
}

async function askOn(own: Line): Promise<void> {
  own.isAsking = true
  for (let step = own.waiting.shift(); step !== undefined && line === own; step = own.waiting.shift()) {
    try {
      await take(own, step)
    } catch (reason) {
      tellTraceProblem(reason)
    }
  }
  own.isAsking = false
  for (const tell of own.whenDone.splice(0)) tell()
}

async function take(own: Line, step: FollowStep): Promise<void> {
  try {
    const answer = await traceClient().follow(photoToTrace(own.photo), own.id, step)
    if (line !== own) return
    const isSame = answer.kept === own.acceptedPx.length && answer.addedPx.length === 0
    if (!isSame) own.acceptedPx = [...own.acceptedPx.slice(0, answer.kept), ...answer.addedPx]
    if (own.acceptedPx.length === 0) return goOnBefore(own)
    const { livePx } = answer
    tracingStore.setState(({ edge }) => ({
      edge: {
        meaning: own.meaning,
        acceptedPx: isSame && edge ? edge.acceptedPx : [...own.before, ...own.acceptedPx],
        livePx,
      },
    }))
  } catch (reason) {
    if (!isLost(reason) || step.kind === 'start') throw reason
    await goOnAnew(own)
    await take(own, step)
  }
}

const isLost = (reason: unknown): boolean =>
  reason instanceof JobProblem && reason.problem.code === 'trace-line-lost'

/** All that the worker knew was taken back: what was drawn before is taken back point by point. */
function goOnBefore(own: Line): void {
  const at = own.before.at(-1)
  if (at === undefined) dropEdge()
  else startEdge(own.photo, own.meaning, at, own.before.slice(0, -1))
}

/** The worker rested or broke down meanwhile: a new line goes on where the old one ended. */
async function goOnAnew(own: Line): Promise<void> {
  const drawn = tracingStore.getState().edge?.acceptedPx ?? []
  const at = drawn.at(-1)
  if (at === undefined) return
  own.id = newId()
  own.before = drawn.slice(0, -1)
  const { addedPx } = await traceClient().follow(photoToTrace(own.photo), own.id, { kind: 'start', at })
  own.acceptedPx = addedPx
}
