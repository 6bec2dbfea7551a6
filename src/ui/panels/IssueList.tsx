import { useStore } from 'zustand'
import { describeIssue, type Issue } from '../../core/plan'
import { sessionStore } from '../../state/sessionStore'
import { MarkIcon, StopIcon } from '../icons'
import { goToIssue } from '../stages/goToStage'
import { stageOfIssue } from '../stages/stageOfIssue'
import { t } from '../text/t'
import { useDisplay } from '../text/useDisplay'

interface Props {
  readonly issues: readonly Issue[]
}

/** Not said yet: the next thing to do, and nothing that went wrong. */
const NOT_YET: ReadonlySet<Issue['code']> = new Set<Issue['code']>([
  'scale-no-photo',
  'reference-missing',
  'reference-too-few-marks',
  'scale-datum-missing',
  'slab-thickness-missing',
  'outline-missing',
  'stations-too-few',
  'table-not-laid',
])

const IssueIcon = ({ severity, code }: Issue) => {
  if (NOT_YET.has(code)) return <MarkIcon mark="needs" />
  if (severity === 'blocker') return <StopIcon />
  return severity === 'warning' ? <MarkIcon mark="doubtful" /> : <span aria-hidden="true">·</span>
}

/** Sentences about what cannot be done or is unwise, each with the way to where it is put right. */
export function IssueList({ issues }: Props) {
  const display = useDisplay()
  const stage = useStore(sessionStore, (session) => session.stage)
  if (issues.length === 0) return null
  return (
    <ul className="issues" aria-label={t('issues-label')}>
      {issues.map((issue) => (
        <li
          key={issue.id}
          className="issue"
          data-severity={NOT_YET.has(issue.code) ? 'not-yet' : issue.severity}
          data-code={issue.code}
        >
          <IssueIcon {...issue} />
          <p>{describeIssue(issue, display)}</p>
          {(stageOfIssue(issue.code) !== stage || issue.at.length > 3) && (
            <button type="button" className="button-link" onClick={() => goToIssue(issue)}>
              {t('issue-go-there')}
            </button>
          )}
        </li>
      ))}
    </ul>
  )
}
