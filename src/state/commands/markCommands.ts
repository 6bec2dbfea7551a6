import type { Photo, Plan, Slab } from '../../core/plan'
import type { PxPoint } from '../../core/geometry'
import { InvariantError } from '../../core/units'
import type { Command } from '../command'
import {
  itemById,
  kept,
  patched,
  patchedList,
  withItem,
  withPhoto,
  withSlab,
  withoutItem,
} from '../planEdits'
import { sameData } from '../sameData'
import { withDatumFollowing } from './withDatumFollowing'
import { withDatumFromMarks } from './withDatumFromMarks'

type Observation = Photo['observations'][number]
type TapedDistance = Slab['tapedDistances'][number]

/** A to Z, then A2 to Z2, and so on: the first that no mark of the slab bears. */
export function nextMarkName(slab: Slab): string {
  const taken = new Set(slab.marks.map((mark) => mark.name))
  for (let n = 0; ; n++) {
    const round = Math.floor(n / 26)
    const name = String.fromCharCode(65 + (n % 26)) + (round === 0 ? '' : String(round + 1))
    if (!taken.has(name)) return name
  }
}

const withObservation = (photo: Photo, seen: Observation): Photo => {
  const { markId } = seen
  if (photo.observations.some((other) => other.markId === markId)) {
    throw new InvariantError('mark is placed already in this photo', { markId })
  }
  return { ...photo, observations: [...photo.observations, seen] }
}

interface PlacedMark {
  readonly slabId: string
  readonly photoId: string
  readonly markId: string
  readonly atPx: PxPoint
  /** How well the hand could aim, photo px; left out when that is not known. */
  readonly sdPx?: number
  /** Set step by step, to stay exactly there: the program does not look at the pixels round it. */
  readonly isKept?: boolean
}

const placedAt = ({ atPx, sdPx, isKept }: PlacedMark): Omit<Observation, 'markId'> => ({
  atPx,
  sdPx: sdPx ?? null,
  refinement: { kind: isKept === true ? 'kept' : 'none' },
})

/** A new mark, or one that the slab has already and that is not yet placed in this photo. */
export const placeMark: Command<PlacedMark & { readonly name?: string; readonly heightMm?: number }> = {
  name: 'placeMark',
  history: 'step',
  apply: (plan, { name, heightMm, ...placed }) =>
    withSlab(plan, placed.slabId, (slab) => {
      const { markId, photoId } = placed
      const isKnown = slab.marks.some((mark) => mark.id === markId)
      const mark = { id: markId, name: name ?? nextMarkName(slab), heightMm: heightMm ?? 0 }
      const marked = isKnown ? slab : { ...slab, marks: [...slab.marks, mark] }
      return withDatumFromMarks(
        withPhoto(marked, photoId, (photo) => withObservation(photo, { markId, ...placedAt(placed) })),
      )
    }),
}

/** The end of the datum that lies on the mark goes along, as long as nothing is laid on the wood. */
export const moveMark: Command<PlacedMark> = {
  name: 'moveMark',
  history: 'step',
  apply: (plan, placed) =>
    withSlab(plan, placed.slabId, (slab) => {
      const { photoId, markId, atPx } = placed
      const before = observationOf(slab, photoId, markId)
      if (sameData(before.atPx, atPx)) return slab
      const after = { ...before, ...placedAt(placed) }
      const moved = withPhoto(slab, photoId, (photo) => ({
        ...photo,
        observations: photo.observations.map((seen) => (seen === before ? after : seen)),
      }))
      return withDatumFollowing(plan, moved, { photoId, fromPx: before.atPx, toPx: atPx })
    }),
}

function observationOf(slab: Slab, photoId: string, markId: string): Photo['observations'][number] {
  const photos = slab.capture.kind === 'photo' ? slab.capture.photos : []
  const photo = photos.find(({ id }) => id === photoId)
  const seen = photo?.observations.find((observation) => observation.markId === markId)
  if (seen === undefined) throw new InvariantError('mark is not placed in this photo', { photoId, markId })
  return seen
}

const withMark = (
  plan: Plan,
  slabId: string,
  markId: string,
  changes: Partial<Slab['marks'][number]>,
): Plan =>
  withSlab(plan, slabId, (slab) =>
    patchedList(
      slab,
      'marks',
      withItem(slab.marks, markId, 'mark', (mark) => patched(mark, changes)),
    ),
  )

export const renameMark: Command<{
  readonly slabId: string
  readonly markId: string
  readonly name: string
}> = {
  name: 'renameMark',
  history: 'step',
  apply: (plan, { slabId, markId, name }) => withMark(plan, slabId, markId, { name }),
}

export const setMarkHeight: Command<{
  readonly slabId: string
  readonly markId: string
  readonly heightMm: number
}> = {
  name: 'setMarkHeight',
  history: 'step',
  apply: (plan, { slabId, markId, heightMm }) => withMark(plan, slabId, markId, { heightMm }),
}

/** The slab without these marks, where they are seen, and the distances taped to them. */
export function withoutMarks(slab: Slab, markIds: readonly string[]): Slab {
  const gone = new Set(markIds)
  const isKept = (id: string): boolean => !gone.has(id)
  const capture =
    slab.capture.kind === 'photo'
      ? {
          ...slab.capture,
          photos: slab.capture.photos.map((photo) =>
            patchedList(
              photo,
              'observations',
              kept(photo.observations, (seen) => isKept(seen.markId)),
            ),
          ),
        }
      : slab.capture
  return {
    ...slab,
    marks: kept(slab.marks, (mark) => isKept(mark.id)),
    tapedDistances: kept(slab.tapedDistances, (distance) => distance.markIds.every(isKept)),
    boards: kept(slab.boards, (board) => board.cornerIds.every(isKept)),
    rules: kept(slab.rules, (rule) => rule.endIds.every(isKept)),
    capture,
  }
}

/** Its distances go too, and a board of which it was a corner. A datum that was set on it stays where it is. */
export const removeMark: Command<{ readonly slabId: string; readonly markId: string }> = {
  name: 'removeMark',
  history: 'step',
  apply: (plan, { slabId, markId }) =>
    withSlab(plan, slabId, (slab) => {
      itemById(slab.marks, markId, 'mark')
      return withoutMarks(slab, [markId])
    }),
}

const withDistance = (slab: Slab, distance: TapedDistance): readonly TapedDistance[] =>
  slab.tapedDistances.some((other) => other.id === distance.id)
    ? withItem(slab.tapedDistances, distance.id, 'taped distance', (before) => patched(before, distance))
    : [...slab.tapedDistances, distance]

/** A new distance, a corrected one, or with `lengthMm` null none any more. */
export const setTapedDistance: Command<{
  readonly slabId: string
  readonly distanceId: string
  readonly markIds: readonly [string, string]
  readonly lengthMm: number | null
}> = {
  name: 'setTapedDistance',
  history: 'step',
  apply: (plan, { slabId, distanceId, markIds, lengthMm }) =>
    withSlab(plan, slabId, (slab) => {
      if (lengthMm === null) {
        return patchedList(
          slab,
          'tapedDistances',
          withoutItem(slab.tapedDistances, distanceId, 'taped distance'),
        )
      }
      for (const markId of markIds) itemById(slab.marks, markId, 'mark')
      if (markIds[0] === markIds[1]) throw new InvariantError('a distance needs two marks', { markIds })
      return patchedList(slab, 'tapedDistances', withDistance(slab, { id: distanceId, markIds, lengthMm }))
    }),
}
