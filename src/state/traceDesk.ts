import { intersectRegions, type PxPoint, regionsAreaMm2, regionsFromRings } from '../core/geometry'
import type { Stroke } from '../core/trace'
import { JobProblem, type PhotoToTrace, TraceClient } from '../workers'
import { trackJob } from './jobStore'
import { newId } from './newId'
import { getPhotoBytes } from './photoDesk'
import { setNotice } from './sessionStore'
import { NO_TRACING, type TracedPhoto, tracingStore } from './tracingStore'

/** Work that takes longer shows how far it is, and can be cancelled. */
const PATIENCE_MS = 500

let client: TraceClient | null = null

/** The one trace worker of this page. */
export const traceClient = (): TraceClient => (client ??= new TraceClient())

export const photoToTrace = ({ hash }: TracedPhoto): PhotoToTrace => ({
  hash,
  bytes: async () => {
    const bytes = await getPhotoBytes(hash)
    if (bytes === null) throw new JobProblem({ code: 'photo-not-open', values: {} })
    return bytes
  },
})

/** Looks at this photo from now on; what was proposed on another is let go. */
export function lookAtPhoto(photo: TracedPhoto): void {
  if (tracingStore.getState().photo?.photoId === photo.photoId) return
  forgetStrokes()
  tracingStore.setState({ ...NO_TRACING, photo })
}

/** Cancelled work is no failure; a problem is told; the rest is our own bug. */
export function tellTraceProblem(reason: unknown): void {
  if (reason instanceof DOMException && reason.name === 'AbortError') return
  if (!(reason instanceof JobProblem)) throw reason
  setNotice(reason.problem)
}

/** Adds a stroke and looks for the outline that all of them mean. */
export function addStroke(photo: TracedPhoto, stroke: Stroke): void {
  lookAtPhoto(photo)
  void findOutline(photo, [...tracingStore.getState().strokes, stroke])
}

/** @returns false when there is no stroke to take back */
export function takeBackStroke(): boolean {
  const { photo, strokes } = tracingStore.getState()
  if (photo === null || strokes.length === 0) return false
  void findOutline(photo, strokes.slice(0, -1))
  return true
}

/** What was found last, and by which strokes: Cancel goes back to it. */
interface Found {
  readonly strokes: readonly Stroke[]
  readonly outlinePx: readonly PxPoint[] | null
}

const NOTHING_FOUND: Found = { strokes: [], outlinePx: null }

let lastFound = NOTHING_FOUND
/** Goes up with every search: an answer to an older one is no longer asked for. */
let search = 0

/** Lets the proposed outline go, with its strokes. */
export function forgetStrokes(): void {
  search++
  lastFound = NOTHING_FOUND
  tracingStore.setState({ ...NOTHING_FOUND, isFindingOutline: false })
}

async function findOutline(photo: TracedPhoto, strokes: readonly Stroke[]): Promise<void> {
  const own = ++search
  tracingStore.setState({ strokes, isFindingOutline: true })
  try {
    const ringPx = await trackJob(
      'job-finding-outline',
      (job) => traceClient().outline(photoToTrace(photo), strokes, job),
      PATIENCE_MS,
    )
    if (own !== search) return
    const hasWood = strokes.some(({ kind }) => kind === 'wood')
    lastFound = { strokes, outlinePx: ringPx.length > 0 ? ringPx : null }
    if (hasWood && ringPx.length === 0) setNotice({ code: 'trace-nothing-found', values: {} })
  } catch (reason) {
    tellTraceProblem(reason)
  } finally {
    if (own === search) tracingStore.setState({ ...lastFound, isFindingOutline: false })
  }
}

/** Gets a photo ready to be followed along its edges: once, so that the first move is as quick as the others. */
export async function prepareEdge(photo: TracedPhoto): Promise<void> {
  try {
    await trackJob('job-preparing-edge', (job) => traceClient().warm(photoToTrace(photo), job), PATIENCE_MS)
  } catch (reason) {
    tellTraceProblem(reason)
  }
}

/** Of a proposal's area: when so much of it lies in voids that are traced already, it is one of them. */
const KNOWN_SHARE = 0.5

function isKnown(ringPx: readonly PxPoint[], known: readonly (readonly PxPoint[])[]): boolean {
  const proposed = regionsFromRings([ringPx])
  const within = intersectRegions(
    proposed,
    known.flatMap((ring) => regionsFromRings([ring])),
  )
  return regionsAreaMm2(within) > KNOWN_SHARE * regionsAreaMm2(proposed)
}

/**
 * Looks for holes and cracks within an outline.
 * @param knownPx voids that are traced already: they are not proposed again
 */
export async function findVoids(
  photo: TracedPhoto,
  outlinePx: readonly PxPoint[],
  knownPx: readonly (readonly PxPoint[])[],
): Promise<void> {
  lookAtPhoto(photo)
  tracingStore.setState({ isFindingVoids: true })
  try {
    const proposals = await trackJob(
      'job-finding-voids',
      (job) => traceClient().voids(photoToTrace(photo), outlinePx, job),
      PATIENCE_MS,
    )
    if (tracingStore.getState().photo?.photoId !== photo.photoId) return
    const voids = proposals
      .filter(({ ringPx }) => !isKnown(ringPx, knownPx))
      .map((proposal) => ({ ...proposal, id: newId() }))
    tracingStore.setState({ voids, chosenVoid: voids[0]?.id ?? null })
  } catch (reason) {
    tellTraceProblem(reason)
  } finally {
    tracingStore.setState({ isFindingVoids: false })
  }
}

/** Takes a proposal off the list; the next one is then looked at. */
export function dropProposedVoid(id: string): void {
  tracingStore.setState(({ voids }) => {
    const place = voids?.findIndex((proposed) => proposed.id === id) ?? -1
    const left = voids?.filter((proposed) => proposed.id !== id) ?? null
    return { voids: left, chosenVoid: left?.[Math.min(Math.max(0, place), left.length - 1)]?.id ?? null }
  })
}

export const chooseProposedVoid = (id: string | null): void => tracingStore.setState({ chosenVoid: id })

/** Lets all proposed voids go. */
export const forgetProposedVoids = (): void => tracingStore.setState({ voids: null, chosenVoid: null })
