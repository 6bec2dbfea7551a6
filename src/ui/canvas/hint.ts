import { formatLength, type LengthDisplay } from '../../core/units'
import type { ToolName } from '../../state/sessionStore'
import { t } from '../text/t'
import { tracesOf } from './handles'
import { footprintPoseOn } from './scene'
import type { Scene } from './tools/toolTypes'

type Hint = (scene: Scene, unfinished: number, display: LengthDisplay) => string | null

const HINTS: Readonly<Record<ToolName, Hint>> = {
  select: () => null,
  mark: () => t('canvas-hint-mark'),
  board: ({ boardSize }, unfinished, display) =>
    boardSize === null
      ? t('canvas-hint-board-unsized')
      : t('canvas-hint-board', {
          corner: String(unfinished + 1),
          length: formatLength(boardSize.lengthMm, display),
          width: formatLength(boardSize.widthMm, display),
        }),
  rule: ({ ruleSize }, unfinished, display) =>
    ruleSize === null
      ? t('canvas-hint-rule-unsized')
      : t('canvas-hint-rule', {
          end: String(unfinished + 1),
          length: formatLength(ruleSize.lengthMm, display),
        }),
  line: (_, unfinished) =>
    unfinished === 0
      ? t('canvas-hint-line')
      : t('canvas-hint-line-drawing', { points: t('canvas-points', { count: unfinished }) }),
  wood: () => t('canvas-hint-wood'),
  notWood: () => t('canvas-hint-not-wood'),
  push: () => t('canvas-hint-push'),
  smooth: () => t('canvas-hint-smooth'),
  straighten: () => t('canvas-hint-straighten'),
  redraw: () => t('canvas-hint-redraw'),
  proposals: () => t('canvas-hint-proposals'),
  outline: (scene, unfinished) => traceHint(scene, 'outline', unfinished),
  void: (scene, unfinished) => traceHint(scene, 'void', unfinished),
  datum: (scene) => t(hasDatum(scene) ? 'canvas-hint-datum' : 'canvas-hint-datum-start'),
  footprint: (scene) => t(isTableLaid(scene) ? 'canvas-hint-footprint' : 'canvas-hint-footprint-start'),
  piece: ({ tray }) => (tray.length > 0 ? t('canvas-hint-piece') : null),
}

/** One sentence on what the tool in hand wants next; null when it needs none. */
export const hintFor: Hint = (scene, unfinished, display) => HINTS[scene.tool](scene, unfinished, display)

const hasDatum = ({ slab }: Scene): boolean => slab?.capture.kind === 'photo' && slab.capture.datum !== null

const isTableLaid = ({ option, slab }: Scene): boolean => footprintPoseOn(option, slab) !== null

function traceHint(scene: Scene, tool: 'outline' | 'void', unfinished: number): string {
  if (scene.followsEdge) return t('canvas-hint-follow')
  if (unfinished > 0) return t('canvas-hint-drawing', { points: t('canvas-points', { count: unfinished }) })
  const hasOutline = tracesOf(scene).some(({ meaning }) => meaning.kind === 'outline')
  return tool === 'outline' && hasOutline ? t('canvas-hint-outline-edit') : t(`canvas-hint-${tool}-start`)
}
