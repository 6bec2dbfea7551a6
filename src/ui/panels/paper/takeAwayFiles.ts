import { layersToDxf, layersToSvg } from '../../../core/drawing'
import {
  type BuildResult,
  cutsCsv,
  type DrawingFrame,
  partsCsv,
  planDrawing,
  resultJson,
} from '../../../core/plan'
import { fileNameOf } from '../../../state/savePlanFile'
import type { PaperWork } from './paperWork'

export type TakeAwayKind = 'svg' | 'dxf' | 'cuts' | 'parts' | 'json'

export interface TakeAwayFile {
  readonly blob: Blob
  readonly name: string
}

const buildOf = ({ input, result }: PaperWork): BuildResult | null => {
  const build = result.options.get(input.option.id)?.build
  return build?.state === 'ready' ? build.value : null
}

interface Made {
  readonly text: string
  readonly type: string
  readonly ending: string
}

function made(kind: TakeAwayKind, work: PaperWork, frame: DrawingFrame): Made {
  const { input, result } = work
  switch (kind) {
    case 'svg':
      return { text: layersToSvg(planDrawing(input, frame)), type: 'image/svg+xml', ending: `-${frame}.svg` }
    case 'dxf':
      return { text: layersToDxf(planDrawing(input, frame)), type: 'image/vnd.dxf', ending: `-${frame}.dxf` }
    case 'cuts':
      return { text: cutsCsv(input), type: 'text/csv', ending: '-cuts.csv' }
    case 'parts':
      return { text: partsCsv(input, buildOf(work)), type: 'text/csv', ending: '-parts.csv' }
    case 'json':
      return {
        text: resultJson(input.plan, result, input.dateText),
        type: 'application/json',
        ending: '-results.json',
      }
  }
}

/** One file to be taken away, named after the plan. */
export function takeAwayFile(kind: TakeAwayKind, work: PaperWork, frame: DrawingFrame): TakeAwayFile {
  const { text, type, ending } = made(kind, work, frame)
  return {
    blob: new Blob([text], { type }),
    name: fileNameOf(work.input.plan.name).replace(/\.waneline$/, ending),
  }
}
