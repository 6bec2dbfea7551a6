import { formatLength, type LengthDisplay } from '../../core/units'
import { t } from '../text/t'
import { pieceLabel, traceLabel, tracesOf } from './handles'
import type { Say } from './say'
import { readyValue } from './scene'
import type { Scene } from './tools/toolTypes'
import type { Selection } from '../../state/sessionStore'

type SayScene = Pick<Scene, 'slab' | 'photo' | 'optionResult' | 'boardSize' | 'option'>

/** The sentence for what has happened, from the plan as it is after it. */
export function sayText(say: Say, scene: SayScene, display: LengthDisplay): string {
  switch (say.kind) {
    case 'selected':
      return selectedText(say.selection, scene, display)
    case 'mark-set':
    case 'mark-moved':
      return t(`say-${say.kind}`, { name: markName(say.markId, scene) })
    case 'point-set':
    case 'point-moved':
    case 'point-added':
    case 'corner-set':
      return t(`say-${say.kind}`, { number: String(say.number) })
    case 'point-taken-back':
      return t('say-point-taken-back', { count: say.left })
    case 'points-missing':
      return t('say-points-missing', { count: say.placed })
    case 'trace-closed':
      return t('say-trace-closed', { points: say.points })
    case 'board-laid': {
      const { lengthMm, widthMm } = scene.boardSize
      return t('say-board-laid', {
        length: formatLength(lengthMm, display),
        width: formatLength(widthMm, display),
      })
    }
    default:
      return t(`say-${say.kind}`)
  }
}

const markName = (markId: string, { slab }: SayScene): string =>
  slab?.marks.find(({ id }) => id === markId)?.name ?? ''

function selectedText(selection: Selection, scene: SayScene, display: LengthDisplay): string {
  if (selection.kind !== 'footprint') return t('say-selected', { what: selectionName(selection, scene) })
  const laid = readyValue(scene.optionResult?.footprint)
  if (!laid) return t('say-selected', { what: t('canvas-table') })
  return t('say-selected-size', {
    what: t('canvas-table'),
    length: formatLength(laid.finishedLengthMm, display),
    width: formatLength(laid.finishedWidthMm, display),
  })
}

/** What a selected thing is called. */
export function selectionName(selection: Selection, scene: SayScene): string {
  const pieces = readyValue(scene.optionResult?.pieces)
  switch (selection.kind) {
    case 'mark':
      return t('canvas-mark', { name: markName(selection.markId, scene) })
    case 'board':
      return scene.slab?.boards.find(({ id }) => id === selection.boardId)?.name ?? ''
    case 'datum':
      return selection.end === null ? t('canvas-datum') : t(`canvas-datum-${selection.end}`)
    case 'trace':
      return traceName(selection.traceId, selection.point, scene)
    case 'cut': {
      const cut = pieces?.cuts.find(({ cutId }) => cutId === selection.cutId)
      return t('canvas-cut', { number: String(cut?.number ?? '') })
    }
    case 'piece':
      return pieceLabel(pieces?.pieces.find(({ key }) => key === selection.key)?.name ?? '')
    case 'placement': {
      const pieceId = scene.option?.placements.find(({ id }) => id === selection.placementId)?.pieceId
      return pieceLabel(scene.option?.pieces.find(({ id }) => id === pieceId)?.name ?? '')
    }
    case 'distance':
    case 'footprint':
      return t('canvas-table')
  }
}

function traceName(traceId: string, index: number | null, scene: SayScene): string {
  const traces = tracesOf(scene)
  const trace = traces.find(({ id }) => id === traceId)
  if (!trace) return ''
  const label = traceLabel(traces, trace)
  return index === null ? label : t('canvas-trace-point', { trace: label, number: String(index + 1) })
}
