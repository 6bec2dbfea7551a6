import { describeProblem } from '../../../core/plan'
import { useDisplay } from '../../text/useDisplay'
import { bt } from './bt'
import type { ShownBuild } from './useBuild'

/** Whether what is shown is of now, of before, or not there at all. */
export function Freshness({ result, isCurrent, isBlocked, problem }: ShownBuild) {
  const display = useDisplay()
  if (isBlocked) return <p>{bt('build-not-yet')}</p>
  if (problem !== null) return <p className="example-warning">{describeProblem(problem, display)}</p>
  if (isCurrent) return null
  return (
    <p className="working" role="status">
      {bt(result === null ? 'build-working' : 'build-old')}
    </p>
  )
}
