import type { Plan } from '../../../core/plan'
import type { Command } from '../../../state/command'
import {
  addStraightLine,
  addTrace,
  deleteTracePoint,
  insertTracePoint,
  layBoard,
  layFootprint,
  layPiece,
  layRule,
  moveLinePoint,
  moveMark,
  movePlacement,
  moveTracePoint,
  placeMark,
  removeMark,
  removePlacement,
  removeRule,
  removeStraightLine,
  removeTrace,
  replaceTraceRing,
  setDatum,
  unplaceMark,
} from '../../../state/commands'
import { run } from '../../../state/run'

/** The commands that canvas tools ask for. */
const commands = {
  addStraightLine,
  addTrace,
  deleteTracePoint,
  insertTracePoint,
  layBoard,
  layFootprint,
  layPiece,
  layRule,
  moveLinePoint,
  moveMark,
  movePlacement,
  moveTracePoint,
  placeMark,
  removeMark,
  removePlacement,
  removeRule,
  removeStraightLine,
  removeTrace,
  replaceTraceRing,
  setDatum,
  unplaceMark,
}

type ArgsOf<C> = C extends Command<infer Args> ? Args : never
type ArgsByName = { [Name in keyof typeof commands]: ArgsOf<(typeof commands)[Name]> }
type Ordered<Name extends keyof ArgsByName> = { readonly name: Name; readonly args: ArgsByName[Name] }

/** A command with its arguments, as data: what a tool's answer holds and its tests compare. */
export type ToolCommand = { [Name in keyof ArgsByName]: Ordered<Name> }[keyof ArgsByName]

const byName: { readonly [Name in keyof ArgsByName]: Command<ArgsByName[Name]> } = commands

/** The plan as it would be. */
export function applyToolCommand<Name extends keyof ArgsByName>(plan: Plan, ordered: Ordered<Name>): Plan {
  return byName[ordered.name].apply(plan, ordered.args)
}

/** Changes the plan: one undo step. */
export function runToolCommand<Name extends keyof ArgsByName>(ordered: Ordered<Name>): void {
  run(byName[ordered.name], ordered.args)
}
