import type { Point, PxPoint } from '../../../core/geometry'
import type { ToolName } from '../../../state/sessionStore'
import { boardTool } from './board/boardTool'
import { datumTool } from './datum/datumTool'
import { footprintTool } from './footprint/footprintTool'
import { lineTool } from './line/lineTool'
import { markTool } from './mark/markTool'
import { pushTool } from './mend/pushTool'
import { redrawTool } from './mend/redrawTool'
import { stretchTool } from './mend/stretchTool'
import { pieceTool } from './piece/pieceTool'
import { proposalTool } from './proposals/proposalTool'
import { ruleTool } from './rule/ruleTool'
import { selectTool } from './select/selectTool'
import { strokeTool } from './strokes/strokeTool'
import type { Aim, Scene, Tool, ToolEvent, ToolStep } from './toolTypes'
import { traceTool } from './trace/traceTool'

/** A tool with its state inside: what the canvas holds, whatever the tool. */
export interface ToolInHand {
  readonly name: ToolName
  readonly step: (event: ToolEvent, scene: Scene) => Omit<ToolStep<unknown>, 'state'> & { next: ToolInHand }
  readonly aim: Aim | null
  readonly unfinished: readonly PxPoint[]
  readonly rubber: readonly [Point, Point] | null
  readonly round: Point | null
}

function inHand<State>(name: ToolName, tool: Tool<State>, state: State = tool.idle): ToolInHand {
  return {
    name,
    step: (event, scene) => {
      const { state: after, ...answer } = tool.step(state, event, scene)
      return { ...answer, next: inHand(name, tool, after) }
    },
    aim: tool.aim(state),
    unfinished: tool.unfinished(state),
    rubber: tool.rubber?.(state) ?? null,
    round: tool.round?.(state) ?? null,
  }
}

const AT_REST: Readonly<Record<ToolName, ToolInHand>> = {
  select: inHand('select', selectTool),
  mark: inHand('mark', markTool),
  board: inHand('board', boardTool),
  outline: inHand('outline', traceTool('outline')),
  void: inHand('void', traceTool('void')),
  wood: inHand('wood', strokeTool('wood')),
  notWood: inHand('notWood', strokeTool('not-wood')),
  proposals: inHand('proposals', proposalTool),
  push: inHand('push', pushTool),
  smooth: inHand('smooth', stretchTool('smooth')),
  straighten: inHand('straighten', stretchTool('straighten')),
  redraw: inHand('redraw', redrawTool),
  rule: inHand('rule', ruleTool),
  line: inHand('line', lineTool),
  datum: inHand('datum', datumTool),
  footprint: inHand('footprint', footprintTool),
  piece: inHand('piece', pieceTool),
}

/** A tool at rest: always the same object, so that stores that hold none have nothing new to tell. */
export const toolAtRest = (name: ToolName): ToolInHand => AT_REST[name]
