import { regionBounds } from '../../core/geometry'
import type { Option, OptionResult, Slab, SlabResult } from '../../core/plan'
import type { Selection } from '../../state/sessionStore'
import { traceLabel } from '../canvas'
import { t } from '../text/t'
import type { Format } from '../text/useFormat'
import { tracesOf } from './photoOf'

export interface BenchObject {
  /** As the canvas names it: `mark/<id>`, `trace/<id>`, `cut/<id>`, `piece/<key>`, `placement/<id>`, `footprint`. */
  readonly key: string
  readonly label: string
  /** Where it is or how large, in the units shown. */
  readonly where: string
  readonly selection: Selection
}

export interface Bench {
  readonly slab: Slab
  readonly slabResult: SlabResult | undefined
  readonly option: Option | null
  readonly optionResult: OptionResult | undefined
}

function markObjects({ slab, slabResult }: Bench, format: Format): readonly BenchObject[] {
  const positions = slabResult?.scale.state === 'ready' ? slabResult.scale.value.markPositions : []
  return slab.marks.map((mark) => {
    const at = positions.find(({ markId }) => markId === mark.id)?.at
    return {
      key: `mark/${mark.id}`,
      label: t('canvas-mark', { name: mark.name }),
      where: at === undefined ? '' : `${format.length(at[0])}, ${format.length(at[1])}`,
      selection: { kind: 'mark', markId: mark.id },
    }
  })
}

function traceObjects({ slab, slabResult }: Bench, format: Format): readonly BenchObject[] {
  const shape = slabResult?.shape.state === 'ready' ? slabResult.shape.value : null
  const traces = tracesOf(slab)
  return traces.map((trace) => {
    const isOutline = trace.meaning.kind === 'outline'
    const found = [...(shape?.voids ?? []), ...(shape?.places ?? [])].find(
      ({ traceId }) => traceId === trace.id,
    )
    const size = shape === null ? '' : `${format.length(shape.lengthMm)} × ${format.length(shape.widthMm)}`
    return {
      key: `trace/${trace.id}`,
      label: traceLabel(traces, trace),
      where: isOutline ? size : found === undefined ? '' : format.area(found.areaMm2),
      selection: { kind: 'trace', traceId: trace.id, point: null },
    }
  })
}

function tableObjects({ slab, option, optionResult }: Bench, format: Format): readonly BenchObject[] {
  if (option === null || optionResult?.footprint.state !== 'ready') return []
  const laid = optionResult.footprint.value
  if (laid.slabId !== slab.id) return []
  return [
    {
      key: 'footprint',
      label: t('canvas-table'),
      where: `${format.length(laid.finishedLengthMm)} × ${format.length(laid.finishedWidthMm)}`,
      selection: { kind: 'footprint' },
    },
  ]
}

function cutObjects({ slab, option, optionResult }: Bench, format: Format): readonly BenchObject[] {
  if (option === null || optionResult?.pieces.state !== 'ready') return []
  const { cuts, pieces, slabId } = optionResult.pieces.value
  if (slabId !== slab.id) return []
  const cutItems = cuts.map((cut): BenchObject => ({
    key: `cut/${cut.cutId}`,
    label: t('canvas-cut', { number: String(cut.number) }),
    where: format.length(cut.lengthMm),
    selection: { kind: 'cut', cutId: cut.cutId },
  }))
  const pieceItems = pieces.map((piece): BenchObject => {
    const { minX, minY, maxX, maxY } = regionBounds(piece.region)
    return {
      key: `piece/${piece.key}`,
      label: piece.use === 'table' ? t('piece-of-table') : t('canvas-offcut', { name: piece.name }),
      where: `${format.length(maxX - minX)} × ${format.length(maxY - minY)}`,
      selection: { kind: 'piece', key: piece.key },
    }
  })
  return [...cutItems, ...pieceItems]
}

function placementObjects({ option }: Bench, format: Format): readonly BenchObject[] {
  if (option === null) return []
  return option.placements.map(({ id, pieceId, pose }) => ({
    key: `placement/${id}`,
    label: t('object-in-gap', { name: option.pieces.find((piece) => piece.id === pieceId)?.name ?? '' }),
    where: `${format.length(pose.xMm)}, ${format.length(pose.yMm)}`,
    selection: { kind: 'placement', placementId: id },
  }))
}

/** Everything on the bench that can be selected, in reading order: marks, traces, table, cuts, pieces, fillings. */
export function benchObjects(bench: Bench, format: Format): readonly BenchObject[] {
  return [
    ...markObjects(bench, format),
    ...traceObjects(bench, format),
    ...tableObjects(bench, format),
    ...cutObjects(bench, format),
    ...placementObjects(bench, format),
  ]
}

/** Do both speak of the same thing? A point of a trace counts as its trace. */
export function isSameSelection(a: Selection | null, b: Selection): boolean {
  if (a === null || a.kind !== b.kind) return false
  const plain = (selection: Selection) => JSON.stringify({ ...selection, point: null, end: null })
  return plain(a) === plain(b)
}
