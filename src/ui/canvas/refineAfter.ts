import type { PxPoint } from '../../core/geometry'
import type { ClickedThing, RefinedClick } from '../../core/photo'
import type { Photo, Plan, Slab } from '../../core/plan'
import { type LookedAtMark, settleClicks, settleLine } from '../../state/commands'
import { planStore } from '../../state/planStore'
import { amend } from '../../state/run'
import { sameData } from '../../state/sameData'
import { JobProblem } from '../../workers/workerLink'
import { announce } from '../a11y/announce'
import { photoClient } from '../photoClient'
import { t } from '../text/t'
import { canvasStore } from './canvasStore'
import type { ToolCommand } from './tools/toolCommand'

interface Place {
  readonly slabId: string
  readonly photoId: string
}

/** After a reference was set or dragged: the photo worker looks at the pixels, and the points move as part of that step. */
export function refineAfter(command: ToolCommand): void {
  switch (command.name) {
    case 'placeMark':
    case 'moveMark':
      if (command.args.isKept !== true) refineMarks(command.args, [command.args.markId])
      return
    case 'layBoard':
    case 'layRule':
      refineMarks(command.args, command.args.markIds)
      return
    case 'addStraightLine':
    case 'moveLinePoint':
      void refineLine(command.args, command.args.lineId)
      return
    default:
      return
  }
}

/** Lets the program look at marks as they stand now. */
export function refineMarks(place: Place, markIds: readonly string[]): void {
  const found = photoIn(planStore.getState().plan, place)
  if (found === null) return
  const things = markIds.flatMap((markId) => {
    const thing = thingOf(found.slab, found.photo, markId)
    return thing === null ? [] : [thing]
  })
  const different = things.filter((thing, n) => things.findIndex((other) => sameData(other, thing)) === n)
  for (const thing of different) void lookAt(place, found.photo, thing)
}

function photoIn(
  plan: Plan,
  { slabId, photoId }: Place,
): { readonly slab: Slab; readonly photo: Photo } | null {
  const slab = plan.slabs.find(({ id }) => id === slabId)
  const photos = slab?.capture.kind === 'photo' ? slab.capture.photos : []
  const photo = photos.find(({ id }) => id === photoId)
  return slab && photo ? { slab, photo } : null
}

interface MarkedThing {
  readonly markIds: readonly string[]
  readonly thing: ClickedThing
}

/** The mark itself, or the board or rule that it is a part of: their edges tell more than one click. */
function thingOf(slab: Slab, photo: Photo, markId: string): MarkedThing | null {
  const at = (id: string): PxPoint | undefined => photo.observations.find((seen) => seen.markId === id)?.atPx
  const board = slab.boards.find(({ cornerIds }) => cornerIds.includes(markId))
  const rule = slab.rules.find(({ endIds }) => endIds.includes(markId))
  return (board && seenBoard(board, at)) ?? (rule && seenRule(rule, at)) ?? seenMark(markId, at)
}

type PlaceOf = (markId: string) => PxPoint | undefined

function seenBoard({ cornerIds }: Slab['boards'][number], at: PlaceOf): MarkedThing | null {
  const [a, b, c, d] = cornerIds.map(at)
  return a && b && c && d ? { markIds: cornerIds, thing: { kind: 'board', cornersPx: [a, b, c, d] } } : null
}

function seenRule({ endIds }: Slab['rules'][number], at: PlaceOf): MarkedThing | null {
  const [from, to] = endIds.map(at)
  return from && to ? { markIds: endIds, thing: { kind: 'rule', endsPx: [from, to] } } : null
}

function seenMark(markId: string, at: PlaceOf): MarkedThing | null {
  const atPx = at(markId)
  return atPx ? { markIds: [markId], thing: { kind: 'mark', atPx } } : null
}

async function lookAt(place: Place, photo: Photo, { markIds, thing }: MarkedThing): Promise<void> {
  const clicks = await looked(photo, thing)
  if (clicks === null) return
  const before = new Map(photo.observations.map((seen) => [seen.markId, seen.atPx]))
  const marks = markIds.flatMap((markId, n): LookedAtMark[] => {
    const clickPx = before.get(markId)
    const click = clicks[n]
    if (clickPx === undefined || click === undefined) return []
    const { sure, px, sdPx } = click
    return [{ markId, clickPx, found: sure ? { kind: 'refined', px, sdPx } : { kind: 'unsure' } }]
  })
  const { plan } = planStore.getState()
  amend(settleClicks, { ...place, marks })
  if (planStore.getState().plan !== plan) announce(sayRefined(place, marks))
}

function sayRefined(place: Place, marks: readonly LookedAtMark[]): string {
  const slab = photoIn(planStore.getState().plan, place)?.slab
  const nameOf = (id: string): string => slab?.marks.find((mark) => mark.id === id)?.name ?? ''
  const unsure = marks.filter(({ found }) => found.kind === 'unsure')
  const names = (some: readonly LookedAtMark[]): string => some.map(({ markId }) => nameOf(markId)).join(', ')
  return unsure.length === 0
    ? t('say-refined', { names: names(marks) })
    : t('say-not-refined', { names: names(unsure) })
}

async function refineLine(place: Place, lineId: string): Promise<void> {
  const photo = photoIn(planStore.getState().plan, place)?.photo
  const line = photo?.straightLines.find(({ id }) => id === lineId)
  if (!photo || !line) return
  const clicks = await looked(photo, { kind: 'line', pointsPx: line.pointsPx })
  const [first] = clicks ?? []
  if (!clicks || !first?.sure) {
    if (clicks) announce(t('say-line-not-refined'))
    return
  }
  const pointsPx = clicks.map(({ px }) => px)
  amend(settleLine, { ...place, lineId, clicksPx: line.pointsPx, pointsPx, sdPx: first.sdPx })
  announce(t('say-line-refined'))
}

/** Null when there are no pixels to look at: the photo is not kept in this browser, or its worker has failed. */
async function looked(photo: Photo, thing: ClickedThing): Promise<readonly RefinedClick[] | null> {
  try {
    const clicks = await photoClient().refine(photo.hash, thing)
    await handLifted()
    return clicks
  } catch (reason) {
    if (reason instanceof JobProblem) return null
    throw reason
  }
}

/** Resolves once no finger or button is down on the canvas: nothing may move under a gesture. */
function handLifted(): Promise<void> {
  if (!canvasStore.getState().isTouched) return Promise.resolve()
  return new Promise((resolve) => {
    const stop = canvasStore.subscribe(({ isTouched }) => {
      if (isTouched) return
      stop()
      resolve()
    })
  })
}
