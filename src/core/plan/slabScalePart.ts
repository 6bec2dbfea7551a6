import { pointDistanceMm, slabPoint } from '../geometry'
import {
  DEFAULT_CLICK_SD_PX,
  measuredLengthMm,
  pxFromSlabPoint,
  type ScaleInput,
  type ScaleProblem,
  type SlabFrame,
  slabFrame,
  type SlabScale,
  slabScaleFromMarks,
  slabPointFromPlane,
} from '../photo'
import { type Issue, issueOf } from './issue'
import { blockedBy, type Found, ready } from './part'
import type { MarkPosition, SlabScaleResult, TapedDistanceCheck } from './planResult'
import type { Photo, Slab } from './schema'
import { spanPoints } from './slabSpan'

type Datum = NonNullable<Extract<Slab['capture'], { kind: 'photo' }>['datum']>

export interface ScalePartInput {
  readonly slabId: string
  readonly marks: Slab['marks']
  readonly tapedDistances: Slab['tapedDistances']
  readonly boards: Slab['boards']
  readonly rules: Slab['rules']
  readonly flatness: Slab['flatness']
  /** How far the outline reaches (`spanText`); null while nothing is traced. */
  readonly span: string | null
  readonly photo: Photo | null
  readonly datum: Datum | null
}

/** True scale of the slab's photo, and the slab frame laid along its datum. */
export function slabScalePart(input: ScalePartInput): Found<SlabScaleResult> {
  const at = ['slabs', input.slabId]
  const { photo, datum } = input
  if (photo === null) return blockedBy([issueOf('scale-no-photo', 'blocker', at)])
  const { scale, problems } = slabScaleFromMarks(scaleInputOf(input, photo))
  const issues = [...problems.map((found) => scaleIssue(found, input)), ...boardNotes(input)]
  if (scale === null) return blockedBy(issues)
  if (datum === null) return blockedBy([...issues, issueOf('scale-datum-missing', 'blocker', at)])
  const frame = slabFrame(scale, datum)
  if (!frame.ok) {
    const issue = issueOf('scale-datum-unusable', 'blocker', at, { reason: frame.problem.code })
    return blockedBy([...issues, issue])
  }
  const result = scaleResult(input, photo, datum, { scale, frame: frame.value })
  return ready(result, [...issues, ...unsureNotes(input, photo, result)])
}

/** A length that is told no better than this is doubted: two standard deviations, as a share of it. */
const UNSURE_SHARE = 0.015

/** Marks clicked in a hurry agree with any tape; what they cost is seen in how sure the lengths are. */
function unsureNotes(
  { slabId, marks }: ScalePartInput,
  photo: Photo,
  { distanceChecks, datum }: SlabScaleResult,
): readonly Issue[] {
  const worst = [...distanceChecks.map(({ foundMm, sdMm }) => ({ lengthMm: foundMm, sdMm })), datum].reduce(
    (one, other) => (other.sdMm / other.lengthMm > one.sdMm / one.lengthMm ? other : one),
  )
  if (2 * worst.sdMm <= UNSURE_SHARE * worst.lengthMm) return []
  const rough = photo.observations.filter(({ refinement }) => refinement.kind !== 'refined')
  const markNames = rough.map(({ markId }) => marks.find(({ id }) => id === markId)?.name ?? '?').join(', ')
  return [
    issueOf('scale-unsure', 'warning', ['slabs', slabId, 'marks'], {
      plusMinusMm: 2 * worst.sdMm,
      lengthMm: worst.lengthMm,
      markNames,
    }),
  ]
}

/** A board misread, or tapped beside its corners, shows in nothing else: one distance across the slab would tell. */
function boardNotes({ slabId, boards, tapedDistances, rules }: ScalePartInput): readonly Issue[] {
  const [first] = boards
  const isChecked = tapedDistances.length > 0 || rules.length > 0 || boards.length > 1
  if (first === undefined || isChecked) return []
  return [issueOf('scale-board-unchecked', 'note', ['slabs', slabId, 'boards', first.id])]
}

/** What core/photo is told of a slab and its photo; a rule's length is a taped distance between its ends. */
export function scaleInputOf(input: ScalePartInput, photo: Photo): ScaleInput {
  const { datum, span } = input
  return {
    marks: input.marks,
    tapedDistances: [
      ...input.tapedDistances,
      ...input.rules.map(({ id, endIds, lengthMm }) => ({ id, markIds: endIds, lengthMm })),
    ],
    boards: input.boards,
    observations: photo.observations.map(({ markId, atPx, sdPx }) => ({
      markId,
      atPx,
      ...(sdPx === null ? {} : { sdPx }),
    })),
    imageWidthPx: photo.widthPx,
    imageHeightPx: photo.heightPx,
    focalLength35mm: photo.focalLength35mm,
    straightLines: photo.straightLines.map(({ id, pointsPx, sdPx }) => ({
      id,
      pointsPx,
      ...(sdPx === null ? {} : { sdPx }),
    })),
    flatness: input.flatness,
    ...(span === null ? {} : { slabSpanPx: spanPoints(span) }),
    ...(datum === null ? {} : { slabAxisPx: [datum.fromPx, datum.toPx] as const }),
  }
}

function scaleResult(
  { marks, tapedDistances }: ScalePartInput,
  photo: Photo,
  datum: Datum,
  { scale, frame }: { readonly scale: SlabScale; readonly frame: SlabFrame },
): SlabScaleResult {
  const markPositions = scale.markPositions.map(({ markId, at }): MarkPosition => {
    const name = marks.find(({ id }) => id === markId)?.name ?? ''
    return { markId, name, at: slabPointFromPlane(frame, at) }
  })
  return {
    photoId: photo.id,
    frame,
    scale,
    markPositions,
    distanceChecks: distanceChecks(scale, photo, marks, tapedDistances),
    pxPerMm: pxPerMmAt(frame, markPositions),
    datum: { fromPx: datum.fromPx, toPx: datum.toPx, ...datumLength(scale, datum) },
  }
}

function distanceChecks(
  scale: SlabScale,
  photo: Photo,
  marks: Slab['marks'],
  tapedDistances: Slab['tapedDistances'],
): readonly TapedDistanceCheck[] {
  const nameOf = (id: string): string => marks.find((mark) => mark.id === id)?.name ?? ''
  return scale.distanceResiduals.flatMap(({ distanceId, residualMm }) => {
    const said = tapedDistances.find(({ id }) => id === distanceId)
    if (said === undefined) return []
    return [
      {
        distanceId,
        fromName: nameOf(said.markIds[0]),
        toName: nameOf(said.markIds[1]),
        statedMm: said.lengthMm,
        foundMm: said.lengthMm - residualMm,
        sdMm: lengthSdMm(scale, photo, said.markIds),
      },
    ]
  })
}

/** Of a length between two marks, read off this photo by a click at each end. */
function lengthSdMm(scale: SlabScale, photo: Photo, markIds: readonly [string, string]): number {
  const [a, b] = markIds.map((id) => photo.observations.find(({ markId }) => markId === id))
  if (!a || !b) return 0
  const sdPx = Math.hypot(a.sdPx ?? DEFAULT_CLICK_SD_PX, b.sdPx ?? DEFAULT_CLICK_SD_PX) / Math.SQRT2
  return measuredLengthMm(scale, a.atPx, b.atPx, sdPx).sd
}

/** The datum's ends are places by definition: only the photo's scale makes its length unsure. */
function datumLength(scale: SlabScale, datum: Datum): { readonly lengthMm: number; readonly sdMm: number } {
  const { value, sd } = measuredLengthMm(scale, datum.fromPx, datum.toPx, 0)
  return { lengthMm: value, sdMm: sd }
}

/** How many photo pixels a millimetre along the datum takes, at the middle of the marks. */
export function pxPerMmAt(frame: SlabFrame, marks: readonly MarkPosition[]): number {
  const middle = [0, 1].map((axis) => marks.reduce((sum, { at }) => sum + (at[axis] ?? 0), 0) / marks.length)
  const [x = 0, y = 0] = middle
  const a = pxFromSlabPoint(frame, slabPoint(x - 5, y))
  const b = pxFromSlabPoint(frame, slabPoint(x + 5, y))
  return pointDistanceMm(a, b) / 10
}

/** A problem of the scale, placed on the plan: ids become the maker's names. */
function scaleIssue(found: ScaleProblem, { slabId, marks, tapedDistances, rules }: ScalePartInput): Issue {
  const nameOf = (id: string): string => marks.find((mark) => mark.id === id)?.name ?? '?'
  const distanceNames = found.distanceIds.map((id) => {
    const rule = rules.find((other) => other.id === id)
    if (rule !== undefined) return rule.name
    const said = tapedDistances.find((distance) => distance.id === id)
    return said === undefined ? '?' : `${nameOf(said.markIds[0])}–${nameOf(said.markIds[1])}`
  })
  const first = found.distanceIds[0]
  const isRule = rules.some(({ id }) => id === first)
  const list = isRule ? 'rules' : 'tapedDistances'
  const at = first === undefined ? ['slabs', slabId, 'marks'] : ['slabs', slabId, list, first]
  return issueOf(found.code, found.severity, at, {
    ...found.values,
    markNames: found.markIds.map(nameOf).join(', '),
    distanceNames: distanceNames.join(', '),
  })
}
