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

const IssueIcon = ({ severity }: { readonly severity: Issue['severity'] }) => {
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
        <li key={issue.id} className="issue" data-severity={issue.severity} data-code={issue.code}>
          <IssueIcon severity={issue.severity} />
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
