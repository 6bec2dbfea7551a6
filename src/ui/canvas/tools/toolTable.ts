import type { PxPoint } from '../../../core/geometry'
import type { ToolName } from '../../../state/sessionStore'
import { boardTool } from './board/boardTool'
import { datumTool } from './datum/datumTool'
import { footprintTool } from './footprint/footprintTool'
import { markTool } from './mark/markTool'
import { pieceTool } from './piece/pieceTool'
import { selectTool } from './select/selectTool'
import type { Aim, Scene, Tool, ToolEvent, ToolStep } from './toolTypes'
import { traceTool } from './trace/traceTool'

/** A tool with its state inside: what the canvas holds, whatever the tool. */
export interface ToolInHand {
  readonly name: ToolName
  readonly step: (event: ToolEvent, scene: Scene) => Omit<ToolStep<unknown>, 'state'> & { next: ToolInHand }
  readonly aim: Aim | null
  readonly unfinished: readonly PxPoint[]
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
  }
}

/** Takes a tool up, at rest. */
export function takeUp(name: ToolName): ToolInHand {
  switch (name) {
    case 'select':
      return inHand(name, selectTool)
    case 'mark':
      return inHand(name, markTool)
    case 'board':
      return inHand(name, boardTool)
    case 'outline':
    case 'void':
      return inHand(name, traceTool(name))
    case 'datum':
      return inHand(name, datumTool)
    case 'footprint':
      return inHand(name, footprintTool)
    case 'piece':
      return inHand(name, pieceTool)
  }
}

/** Tools that set points: for them the arrow keys move a crosshair. */
export const setsPoints = (name: ToolName): boolean =>
  name === 'mark' || name === 'board' || name === 'outline' || name === 'void' || name === 'datum'
