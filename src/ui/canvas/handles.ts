import {
  addPoints,
  midpoint,
  type Point,
  pointDistanceMm,
  type PxPoint,
  regionBounds,
  scalePoint,
  subtractPoints,
} from '../../core/geometry'
import type { SlabPiece, Trace } from '../../core/plan'
import { t } from '../text/t'
import { poseSubject } from './poseSubject'
import { readyValue } from '../readyValue'
import type { Handle, PoseTarget, Scene } from './tools/toolTypes'
import { isOnScreen, screenOf } from './view'

/** How far outside the body the turn handle stands, screen px: clear of the body under a fingertip. */
const TURN_HANDLE_PX = 34

/** All that can be selected or grabbed in this view, in reading order; later ones are drawn on top. */
export function handlesOf(scene: Scene): readonly Handle[] {
  switch (scene.view) {
    case 'photo':
      return [
        ...(setsPoints(scene.tool) ? [] : optionHandles(scene)),
        ...traceHandles(scene),
        ...lineHandles(scene),
        ...datumHandles(scene),
        ...markHandles(scene),
      ]
    case 'above':
      return [...pieceHandles(scene), ...cutHandles(scene), ...markHandles(scene), ...footprintHandles(scene)]
    case 'table':
      return [...trayHandles(scene), ...placementHandles(scene)]
  }
}

/** Whoever marks or traces wants to see the bare photo: these are then left out. */
const optionHandles = (scene: Scene): readonly Handle[] => [
  ...pieceHandles(scene),
  ...cutHandles(scene),
  ...footprintHandles(scene),
]

/** Tools that set points in the photo. */
export const setsPoints = (tool: Scene['tool']): boolean =>
  tool !== 'select' && tool !== 'footprint' && tool !== 'piece'

/** A handle at a world point; none when it has no place in this view. */
function handleAt(
  scene: Scene,
  world: Point | null,
  rest: Omit<Handle, 'screen' | 'world'>,
): readonly Handle[] {
  return world === null ? [] : [{ ...rest, world, screen: screenOf(scene.camera, world) }]
}

function markHandles(scene: Scene): readonly Handle[] {
  const { slab, photo } = scene
  if (!slab || !photo) return []
  return photo.observations.flatMap(({ markId, atPx }) => {
    const mark = slab.marks.find(({ id }) => id === markId)
    if (!mark) return []
    return handleAt(scene, scene.frames.worldFromPx(atPx), {
      id: `mark/${markId}`,
      kind: 'mark',
      label: t('canvas-mark', { name: mark.name }),
      selection: { kind: 'mark', markId },
      grab: scene.view === 'photo' ? { kind: 'point', target: { kind: 'mark', markId }, at: atPx } : null,
    })
  })
}

/** The datum where it is set; on a later photo of the slab it shows nowhere. */
export function datumOn({
  slab,
  photo,
}: Pick<Scene, 'slab' | 'photo'>): { readonly fromPx: PxPoint; readonly toPx: PxPoint } | null {
  const datum = slab?.capture.kind === 'photo' ? slab.capture.datum : null
  return datum?.photoId === photo?.id ? datum : null
}

function datumHandles(scene: Scene): readonly Handle[] {
  const datum = datumOn(scene)
  if (datum === null) return []
  const { fromPx, toPx } = datum
  const ends = [
    { end: 'from', at: fromPx, label: t('canvas-datum-from') },
    { end: 'to', at: toPx, label: t('canvas-datum-to') },
  ] as const
  return ends.flatMap(({ end, at, label }) =>
    handleAt(scene, scene.frames.worldFromPx(at), {
      id: `datum/${end}`,
      kind: 'datumEnd',
      label,
      selection: { kind: 'datum', end },
      grab: { kind: 'point', target: { kind: 'datumEnd', end }, at },
    }),
  )
}

/** Points of straight lines: those of the selected line, and of all while they are being drawn. */
function lineHandles(scene: Scene): readonly Handle[] {
  const { photo, selection, tool } = scene
  const isOpen = (lineId: string): boolean =>
    tool === 'line' || (selection?.kind === 'line' && selection.lineId === lineId)
  return (photo?.straightLines ?? []).flatMap((line, n) =>
    (isOpen(line.id) ? line.pointsPx : line.pointsPx.slice(0, 1)).flatMap((at, index) =>
      handleAt(scene, scene.frames.worldFromPx(at), {
        id: `line/${line.id}/${index}`,
        kind: 'linePoint',
        label: t('canvas-line-point', { number: String(n + 1), point: String(index + 1) }),
        selection: { kind: 'line', lineId: line.id, point: isOpen(line.id) ? index : null },
        grab: isOpen(line.id)
          ? { kind: 'point', target: { kind: 'linePoint', lineId: line.id, index }, at }
          : null,
      }),
    ),
  )
}

/** Traces of the slab in the photo that is shown. */
export const tracesOf = ({ slab, photo }: Pick<Scene, 'slab' | 'photo'>): readonly Trace[] =>
  slab?.capture.kind === 'photo' ? slab.capture.traces.filter(({ photoId }) => photoId === photo?.id) : []

/** A trace whose points show and can be grabbed: that of the trace tool in hand, or the selected one. */
export function isTraceOpen(trace: Trace, { tool, selection }: Pick<Scene, 'tool' | 'selection'>): boolean {
  if (tool === 'outline' || tool === 'void')
    return (trace.meaning.kind === 'outline') === (tool === 'outline')
  return tool === 'select' && selection?.kind === 'trace' && selection.traceId === trace.id
}

/** What a trace is called: the outline, or its kind and its number among them in the order in which they were traced. */
export function traceLabel(traces: readonly Trace[], trace: Trace): string {
  const { kind } = trace.meaning
  if (kind === 'outline') return t('canvas-outline')
  const alike = traces.filter(({ meaning }) => meaning.kind === kind)
  return t(`canvas-${kind}`, { number: String(alike.indexOf(trace) + 1) })
}

function traceHandles(scene: Scene): readonly Handle[] {
  const { slab } = scene
  const traces = tracesOf(scene)
  if (!slab) return []
  return traces.flatMap((trace) => {
    const label = traceLabel(traces, trace)
    const [first] = trace.ringPx
    const whole = handleAt(scene, first ?? null, {
      id: `trace/${trace.id}`,
      kind: 'trace',
      label,
      selection: { kind: 'trace', traceId: trace.id, point: null },
      grab: null,
    })
    return isTraceOpen(trace, scene) ? [...whole, ...pointHandles(scene, trace, label)] : whole
  })
}

function pointHandles(scene: Scene, trace: Trace, label: string): readonly Handle[] {
  return trace.ringPx.flatMap((at, index) =>
    handleAt(scene, scene.frames.worldFromPx(at), {
      id: `trace/${trace.id}/${index}`,
      kind: 'tracePoint',
      label: t('canvas-trace-point', { trace: label, number: String(index + 1) }),
      selection: { kind: 'trace', traceId: trace.id, point: index },
      grab: { kind: 'point', target: { kind: 'tracePoint', traceId: trace.id, index }, at },
    }),
  )
}

function cutHandles(scene: Scene): readonly Handle[] {
  const { option } = scene
  const pieces = readyValue(scene.optionResult?.pieces)
  if (!option || !pieces || pieces.slabId !== scene.slab?.id) return []
  return pieces.cuts.flatMap((cut) =>
    handleAt(scene, scene.frames.worldFromSlab(midpoint(cut.from.at, cut.to.at)), {
      id: `cut/${cut.cutId}`,
      kind: 'cut',
      label: t('canvas-cut', { number: String(cut.number) }),
      selection: { kind: 'cut', cutId: cut.cutId },
      grab: null,
    }),
  )
}

/** A bare letter would pass for a mark. */
export const pieceLabel = (name: string): string => (name.length > 2 ? name : t('canvas-offcut', { name }))

/** Pieces too narrow on the slab to carry a name tag, mm. */
const LEAST_LABELLED_MM = 12

/** Is the piece large enough to be worth naming? */
export function isWorthNaming(piece: SlabPiece): boolean {
  const { minX, minY, maxX, maxY } = regionBounds(piece.region)
  return Math.min(maxX - minX, maxY - minY) >= LEAST_LABELLED_MM
}

function pieceHandles(scene: Scene): readonly Handle[] {
  const { option } = scene
  const pieces = readyValue(scene.optionResult?.pieces)
  if (!option || !pieces || pieces.slabId !== scene.slab?.id) return []
  return pieces.pieces.filter(isWorthNaming).flatMap((piece) =>
    handleAt(scene, scene.frames.worldFromSlab(piece.anchor), {
      id: `piece/${piece.key}`,
      kind: 'piece',
      label: pieceLabel(piece.name),
      selection: { kind: 'piece', key: piece.key },
      grab: null,
    }),
  )
}

function trayHandles(scene: Scene): readonly Handle[] {
  const { option } = scene
  if (!option) return []
  return scene.tray.flatMap(({ piece }) => {
    const target: PoseTarget = { kind: 'tray', pieceKey: piece.key, pieceId: '', placementId: '' }
    return handleAt(scene, poseSubject(scene, target)?.centre ?? null, {
      id: `piece/${piece.key}`,
      kind: 'piece',
      label: pieceLabel(piece.name),
      selection: { kind: 'piece', key: piece.key },
      grab: null,
    })
  })
}

function footprintHandles(scene: Scene): readonly Handle[] {
  const { option } = scene
  const subject = poseSubject(scene, { kind: 'footprint' })
  if (!option || !subject) return []
  const centre = subject.worldOf(subject.centre)
  const selection = { kind: 'footprint' } as const
  const whole = handleAt(scene, centre, {
    id: 'footprint',
    kind: 'footprint',
    label: t('canvas-table'),
    selection,
    grab: null,
  })
  const turns = scene.tool === 'footprint' || scene.selection?.kind === 'footprint'
  return turns ? [...whole, ...turnHandle(scene, { kind: 'footprint' }, selection)] : whole
}

function placementHandles(scene: Scene): readonly Handle[] {
  const { option } = scene
  if (!option) return []
  return option.placements.flatMap(({ id, pieceId }) => {
    const target: PoseTarget = { kind: 'placement', placementId: id }
    const subject = poseSubject(scene, target)
    if (!subject) return []
    const selection = { kind: 'placement', placementId: id } as const
    const name = pieceLabel(option.pieces.find((piece) => piece.id === pieceId)?.name ?? '')
    const whole = handleAt(scene, subject.centre, {
      id: `placement/${id}`,
      kind: 'placement',
      label: name,
      selection,
      grab: null,
    })
    const isSelected = scene.selection?.kind === 'placement' && scene.selection.placementId === id
    return isSelected ? [...whole, ...turnHandle(scene, target, selection)] : whole
  })
}

/** Stands off the body, on the line from its centre through its grip (the middle of one end), or at the other end. */
function turnHandle(scene: Scene, target: PoseTarget, selection: Handle['selection']): readonly Handle[] {
  const subject = poseSubject(scene, target)
  const centre = subject?.worldOf(subject.centre)
  const grip = subject?.worldOf(subject.grip)
  if (!centre || !grip) return []
  const middle = screenOf(scene.camera, centre)
  const foot = screenOf(scene.camera, grip)
  const length = pointDistanceMm(middle, foot)
  if (length === 0) return []
  const step = scalePoint(subtractPoints(foot, middle), (length + TURN_HANDLE_PX) / length)
  const ends: readonly Point[] = [addPoints(middle, step), subtractPoints(middle, step)]
  const screen = ends.find((end) => isOnScreen(end, scene.size)) ?? ends[0]
  if (!screen) return []
  return [
    {
      id: 'turn',
      kind: 'turnHandle',
      label: t('canvas-turn'),
      world: centre,
      screen,
      selection,
      grab: { kind: 'turn', target },
    },
  ]
}
