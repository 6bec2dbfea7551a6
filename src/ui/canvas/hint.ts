import { formatLength, type LengthDisplay } from '../../core/units'
import { t } from '../text/t'
import { tracesOf } from './handles'
import { footprintPoseOn } from './scene'
import type { Scene } from './tools/toolTypes'

/** One sentence on what the tool in hand wants next; null when it needs none. */
export function hintFor(scene: Scene, unfinished: number, display: LengthDisplay): string | null {
  switch (scene.tool) {
    case 'select':
      return null
    case 'mark':
      return t('canvas-hint-mark')
    case 'board':
      return t('canvas-hint-board', {
        corner: String(unfinished + 1),
        length: formatLength(scene.boardSize.lengthMm, display),
        width: formatLength(scene.boardSize.widthMm, display),
      })
    case 'outline':
    case 'void':
      return traceHint(scene, scene.tool, unfinished)
    case 'datum':
      return scene.slab?.capture.kind === 'photo' && scene.slab.capture.datum
        ? t('canvas-hint-datum')
        : t('canvas-hint-datum-start')
    case 'footprint':
      return footprintPoseOn(scene.option, scene.slab)
        ? t('canvas-hint-footprint')
        : t('canvas-hint-footprint-start')
    case 'piece':
      return scene.tray.length > 0 ? t('canvas-hint-piece') : null
  }
}

function traceHint(scene: Scene, tool: 'outline' | 'void', unfinished: number): string {
  if (unfinished > 0) return t('canvas-hint-drawing', { points: t('canvas-points', { count: unfinished }) })
  const hasOutline = tracesOf(scene).some(({ meaning }) => meaning.kind === 'outline')
  return tool === 'outline' && hasOutline ? t('canvas-hint-outline-edit') : t(`canvas-hint-${tool}-start`)
}
