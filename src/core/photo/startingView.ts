import { ok, type Result } from '../units'
import { assumedView } from './assumedView'
import { laidOutView } from './laidOutView'
import { type ScaleInput, type ScaleProblem, scaleProblem } from './scaleInput'
import { type ScaleNetwork, tiedGroups } from './scaleNetwork'
import type { StartingView } from './viewStart'

/**
 * A first camera and first places of all marks, for the adjustment to start from: from the largest group of marks that
 * their lengths fix, or else, for a rule or two, from the usual way of holding a phone. Rules: PHO-17.
 */
export function startingView(input: ScaleInput, network: ScaleNetwork): Result<StartingView, ScaleProblem> {
  const group = tiedGroups(network).find((g) => g.length >= 4)
  const laidOut = group ? laidOutView(input, network, group) : null
  if (laidOut && (laidOut.ok || laidOut.problem.code !== 'distances-too-few')) return laidOut
  const assumed = assumedView(input, network)
  if (assumed === null) return { ok: false, problem: scaleProblem('reference-unsolvable', 'blocker') }
  const lacking = laidOut ? { ...laidOut.problem, severity: 'warning' as const } : whatIsLacking(network)
  return ok({ ...assumed, problems: [lacking] })
}

function whatIsLacking({ lengths }: ScaleNetwork): ScaleProblem {
  const distanceIds = lengths.flatMap((l) => (l.distanceId === null ? [] : [l.distanceId]))
  const code = lengths.length === 1 ? 'length-alone' : 'tilt-assumed'
  return scaleProblem(code, 'warning', { values: { count: lengths.length }, distanceIds })
}
