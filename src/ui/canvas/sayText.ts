import { formatLength, type LengthDisplay } from '../../core/units'
import { t } from '../text/t'
import { pieceLabel, traceLabel, tracesOf } from './handles'
import type { Say } from './say'
import { readyValue } from '../readyValue'
import type { Scene } from './tools/toolTypes'
import type { Selection } from '../../state/sessionStore'

type SayScene = Pick<Scene, 'slab' | 'photo' | 'optionResult' | 'boardSize' | 'ruleSize' | 'option'>

/** The sentence for what has happened, from the plan as it is after it. */
export function sayText(say: Say, scene: SayScene, display: LengthDisplay): string {
  if ('number' in say) return t(`say-${say.kind}`, { number: String(say.number) })
  if ('left' in say) return t(`say-${say.kind}`, { count: say.left })
  if ('points' in say) return t(`say-${say.kind}`, { points: say.points })
  if ('markId' in say) return t(`say-${say.kind}`, { name: markName(say.markId, scene) })
  switch (say.kind) {
    case 'selected':
      return selectedText(say.selection, scene, display)
    case 'points-missing':
      return t('say-points-missing', { count: say.placed })
    case 'rule-laid':
      return ruleText(scene, display)
    case 'board-laid':
      return boardText(scene, display)
    default:
      return t(`say-${say.kind}`)
  }
}

const ruleText = ({ ruleSize }: SayScene, display: LengthDisplay): string =>
  ruleSize === null
    ? t('canvas-hint-rule-unsized')
    : t('say-rule-laid', { length: formatLength(ruleSize.lengthMm, display) })

function boardText({ boardSize }: SayScene, display: LengthDisplay): string {
  if (boardSize === null) return t('say-board-unsized')
  return t('say-board-laid', {
    length: formatLength(boardSize.lengthMm, display),
    width: formatLength(boardSize.widthMm, display),
  })
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
  switch (selection.kind) {
    case 'trace':
      return traceName(selection.traceId, selection.point, scene)
    case 'cut':
      return cutName(selection.cutId, scene)
    case 'piece':
      return pieceName(selection.key, scene)
    case 'placement':
      return placementName(selection.placementId, scene)
    default:
      return referenceName(selection, scene)
  }
}

/** What the size is told by; the table is all that is left. */
function referenceName(selection: Selection, scene: SayScene): string {
  switch (selection.kind) {
    case 'mark':
      return t('canvas-mark', { name: markName(selection.markId, scene) })
    case 'board':
      return nameIn(scene.slab?.boards, selection.boardId)
    case 'rule':
      return nameIn(scene.slab?.rules, selection.ruleId)
    case 'line':
      return lineName(selection.lineId, scene)
    case 'datum':
      return selection.end === null ? t('canvas-datum') : t(`canvas-datum-${selection.end}`)
    default:
      return t('canvas-table')
  }
}

/** Straight lines are numbered in the order in which they were drawn. */
function lineName(lineId: string, { photo }: Pick<SayScene, 'photo'>): string {
  const place = photo?.straightLines.findIndex(({ id }) => id === lineId) ?? -1
  return t('canvas-line', { number: String(place + 1) })
}

interface Named {
  readonly id: string
  readonly name: string
}

const nameIn = (list: readonly Named[] | undefined, id: string | undefined): string =>
  list?.find((item) => item.id === id)?.name ?? ''

const piecesOf = ({ optionResult }: SayScene) => readyValue(optionResult?.pieces)

function cutName(cutId: string, scene: SayScene): string {
  const cut = piecesOf(scene)?.cuts.find((other) => other.cutId === cutId)
  return t('canvas-cut', { number: String(cut?.number ?? '') })
}

const pieceName = (key: string, scene: SayScene): string =>
  pieceLabel(piecesOf(scene)?.pieces.find((piece) => piece.key === key)?.name ?? '')

function placementName(placementId: string, { option }: SayScene): string {
  const pieceId = option?.placements.find(({ id }) => id === placementId)?.pieceId
  return pieceLabel(nameIn(option?.pieces, pieceId))
}

function traceName(traceId: string, index: number | null, scene: SayScene): string {
  const traces = tracesOf(scene)
  const trace = traces.find(({ id }) => id === traceId)
  if (!trace) return ''
  const label = traceLabel(traces, trace)
  return index === null ? label : t('canvas-trace-point', { trace: label, number: String(index + 1) })
}
