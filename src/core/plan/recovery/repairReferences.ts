import type { Option, Plan, Slab } from '../schema'
import type { LostPart } from './repairSchema'

type Note = (code: string, name: string, owner: string) => void

type PhotoCapture = Extract<Slab['capture'], { kind: 'photo' }>

/** The first of each id stays. */
function firstOfEachId<T extends { readonly id: string }>(
  items: readonly T[],
  onDrop: (item: T) => void,
): T[] {
  const seen = new Set<string>()
  return items.filter((item) => {
    const isNew = !seen.has(item.id)
    seen.add(item.id)
    if (!isNew) onDrop(item)
    return isNew
  })
}

function keptIf<T>(items: readonly T[], isKept: (item: T) => boolean, onDrop: (item: T) => void): T[] {
  return items.filter((item) => {
    const keeps = isKept(item)
    if (!keeps) onDrop(item)
    return keeps
  })
}

/** A slab or an option is too dear to drop for a doubled id: the later one gets an id of its own. */
function withIdsOfTheirOwn<T extends { readonly id: string; readonly name: string }>(
  items: readonly T[],
  note: Note,
): T[] {
  const seen = new Set<string>()
  const given = new Set(items.map(({ id }) => id))
  return items.map((item) => {
    if (!seen.has(item.id)) {
      seen.add(item.id)
      return item
    }
    let number = 2
    while (given.has(`${item.id.slice(0, 50)}-${number}`)) number++
    const id = `${item.id.slice(0, 50)}-${number}`
    given.add(id)
    seen.add(id)
    note('reset-doubled-id', item.name, item.name)
    return { ...item, id }
  })
}

const areDifferent = (ids: readonly string[]): boolean => new Set(ids).size === ids.length

function repairMarks(slab: Slab, note: Note): Pick<Slab, 'marks' | 'tapedDistances' | 'boards' | 'rules'> {
  const marks = firstOfEachId(slab.marks, (mark) => note('lost-mark', mark.name, slab.name))
  const names = new Map(marks.map((mark) => [mark.id, mark.name]))
  const joinsMarks = (ids: readonly string[]): boolean =>
    areDifferent(ids) && ids.every((id) => names.has(id))
  const noteDistance = ({ markIds }: Slab['tapedDistances'][number]): void =>
    note('lost-distance', markIds.map((id) => names.get(id) ?? id).join('–'), slab.name)
  const noteBoard = (board: Slab['boards'][number]): void => note('lost-board', board.name, slab.name)
  const noteRule = (rule: Slab['rules'][number]): void => note('lost-rule', rule.name, slab.name)
  return {
    marks,
    tapedDistances: firstOfEachId(
      keptIf(slab.tapedDistances, ({ markIds }) => joinsMarks(markIds), noteDistance),
      noteDistance,
    ),
    boards: firstOfEachId(
      keptIf(slab.boards, ({ cornerIds }) => joinsMarks(cornerIds), noteBoard),
      noteBoard,
    ),
    rules: firstOfEachId(
      keptIf(slab.rules, ({ endIds }) => joinsMarks(endIds), noteRule),
      noteRule,
    ),
  }
}

function repairCapture(
  slab: Slab,
  capture: PhotoCapture,
  marks: ReadonlySet<string>,
  note: Note,
): PhotoCapture {
  const lose = (code: string, name: string): void => note(code, name, slab.name)
  const photos = firstOfEachId(capture.photos, (photo) => lose('lost-photo', photo.fileName)).map((photo) => {
    const seen = new Set<string>()
    return {
      ...photo,
      observations: keptIf(
        photo.observations,
        ({ markId }) => marks.has(markId) && !seen.has(markId) && seen.add(markId).has(markId),
        ({ markId }) => lose('lost-observation', slab.marks.find(({ id }) => id === markId)?.name ?? markId),
      ),
      straightLines: firstOfEachId(photo.straightLines, () => lose('lost-line', '')),
    }
  })
  const isPhoto = (photoId: string): boolean => photos.some(({ id }) => id === photoId)
  const traces = firstOfEachId(
    keptIf(
      capture.traces,
      ({ photoId }) => isPhoto(photoId),
      () => lose('lost-trace', ''),
    ),
    () => lose('lost-trace', ''),
  )
  const hasDatum = capture.datum === null || isPhoto(capture.datum.photoId)
  if (!hasDatum) lose('lost-datum', '')
  return { ...capture, photos, datum: hasDatum ? capture.datum : null, traces }
}

function repairSlab(slab: Slab, note: Note): Slab {
  const marked = { ...slab, ...repairMarks(slab, note) }
  if (slab.capture.kind !== 'photo') return marked
  const marks = new Set(marked.marks.map(({ id }) => id))
  return { ...marked, capture: repairCapture(slab, slab.capture, marks, note) }
}

function repairOption(option: Option, slabs: ReadonlySet<string>, note: Note): Option {
  const lose = (code: string, name: string): void => note(code, name, option.name)
  const losePiece = (piece: Option['pieces'][number]): void => lose('lost-piece', piece.name)
  const pieces = firstOfEachId(
    keptIf(option.pieces, ({ slabId }) => slabs.has(slabId), losePiece),
    losePiece,
  )
  const names = new Map(option.pieces.map(({ id, name }) => [id, name]))
  const isPiece = (pieceId: string): boolean => pieces.some(({ id }) => id === pieceId)
  const losePlacement = ({ pieceId }: Option['placements'][number]): void =>
    lose('lost-placement', names.get(pieceId) ?? pieceId)
  const loseCut = (cut: Option['cuts'][number]): void =>
    lose('lost-cut', String(option.cuts.indexOf(cut) + 1))
  const hasSlab = option.footprint === null || slabs.has(option.footprint.slabId)
  if (!hasSlab) lose('lost-footprint', '')
  return {
    ...option,
    footprint: hasSlab ? option.footprint : null,
    cuts: firstOfEachId(
      keptIf(option.cuts, (cut) => cut.kind !== 'line' || isPiece(cut.pieceId), loseCut),
      loseCut,
    ),
    pieces,
    placements: firstOfEachId(
      keptIf(option.placements, ({ pieceId }) => isPiece(pieceId), losePlacement),
      losePlacement,
    ),
  }
}

/**
 * Drops what points at something that is not there (a distance to a missing mark, a footprint on a missing slab) and
 * what is there twice under one id.
 * @returns the plan, and what was lost by name; the very plan when nothing was
 */
export function repairReferences(plan: Plan): { readonly plan: Plan; readonly lost: readonly LostPart[] } {
  const lost: LostPart[] = []
  const note: Note = (code, name, owner) => lost.push({ code, values: { name, owner } })
  const slabs = withIdsOfTheirOwn(plan.slabs, note).map((slab) => repairSlab(slab, note))
  const slabIds = new Set(slabs.map(({ id }) => id))
  const options = withIdsOfTheirOwn(plan.options, note).map((option) => repairOption(option, slabIds, note))
  return lost.length === 0 ? { plan, lost } : { plan: { ...plan, slabs, options }, lost }
}
