import { useStore } from 'zustand'
import { sessionStore } from '../../state/sessionStore'
import { PartBoundary } from '../errors/PartBoundary'
import type { StageName } from '../stages/stageNames'
import { t } from '../text/t'
import { CutsPanel } from './CutsPanel'
import { EdgePanel } from './EdgePanel'
import { IssueList } from './IssueList'
import { PaperPanel } from './PaperPanel'
import { PhotoPanel } from './PhotoPanel'
import { SizePanel } from './SizePanel'
import { TablePanel } from './TablePanel'
import { useIssues, useStageIssues } from './useIssues'

const PANELS: Readonly<Record<StageName, () => React.ReactNode>> = {
  photo: PhotoPanel,
  scale: SizePanel,
  trace: EdgePanel,
  table: TablePanel,
  cuts: CutsPanel,
  paper: PaperPanel,
}

/** Paper gathers what is open anywhere; the other stages show their own. */
function StageIssues({ stage }: { readonly stage: StageName }) {
  const own = useStageIssues(stage)
  const all = useIssues()
  return <IssueList issues={stage === 'paper' ? all : own} />
}

/** Inputs and results of the stage that is open. */
export function StagePanel() {
  const stage = useStore(sessionStore, (session) => session.stage)
  const Panel = PANELS[stage]
  return (
    <div className="stage-panel" key={stage}>
      <div className="panel-head">
        <h2 id="stage-heading">{t(`stage-${stage}`)}</h2>
        <p className="panel-lead">{t(`lead-${stage}`)}</p>
      </div>
      <PartBoundary part={t(`stage-${stage}`)}>
        <StageIssues stage={stage} />
        <Panel />
      </PartBoundary>
    </div>
  )
}
