import { planStore } from '../../state/planStore'
import { sessionStore, setDraft } from '../../state/sessionStore'
import { announce } from '../a11y/announce'
import { canvasStore, putInHand, toolInHand } from './canvasStore'
import { currentScene, settledModel } from './currentScene'
import { refineAfter } from './refineAfter'
import type { Say } from './say'
import { sayText } from './sayText'
import { applyToolCommand, runToolCommand } from './tools/toolCommand'
import type { ToolEvent, ToolStep } from './tools/toolTypes'
import { carryOut } from './tracing'

type Answer = Omit<ToolStep<unknown>, 'state'>

/** Hands an event to the tool in hand and does what it answers: draft, command, selection, announcement. */
export function sendToTool(event: ToolEvent): Answer {
  const scene = currentScene()
  const slabId = scene.slab?.id ?? null
  const hand = toolInHand(canvasStore.getState(), slabId, scene.tool)
  const { next, ...answer } = hand.step(event, scene)
  putInHand(slabId, next)
  if (answer.command) {
    runToolCommand(answer.command)
    refineAfter(answer.command)
  } else showDraft(answer)
  for (const order of answer.trace ?? []) carryOut(order, scene)
  if (answer.select !== undefined) sessionStore.setState({ selection: answer.select })
  if (answer.layDown) sessionStore.setState({ tool: 'select' })
  if (answer.say) sayIt(answer.say)
  return answer
}

/** What a maker would otherwise not see or not understand. */
const SHOWN: ReadonlySet<Say['kind']> = new Set<Say['kind']>([
  'piece-returned',
  'outline-exists',
  'outside-photo',
  'points-missing',
  'trace-dropped',
])

const sayIt = (say: Say): void =>
  announce(sayText(say, settledModel(), sessionStore.getState().display), SHOWN.has(say.kind))

function showDraft({ draft }: Answer): void {
  const before = sessionStore.getState().draft
  const after = draft ? applyToolCommand(planStore.getState().plan, draft) : null
  if (before !== after) setDraft(after)
}
