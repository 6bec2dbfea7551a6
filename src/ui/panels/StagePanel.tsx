import { lazy, Suspense } from 'react'
import { useStore } from 'zustand'
import { sessionStore } from '../../state/sessionStore'
import { PartBoundary } from '../errors/PartBoundary'
import type { StageName } from '../stages/stageNames'
import { t } from '../text/t'
import { CutsPanel } from './CutsPanel'
import { EdgePanel } from './EdgePanel'
import { IssueList } from './IssueList'
import { PaperPanel } from './PaperPanel'
import { MoreInputs } from './pour/MoreInputs'
import { PhotoPanel } from './PhotoPanel'
import { SizePanel } from './SizePanel'
import { TablePanel } from './TablePanel'
import { useIssues, useStageIssues } from './useIssues'

const PourPanel = lazy(async () => {
  const { PourPanel: loaded } = await import('./pour/PourPanel')
  return { default: loaded }
})

const PANELS: Readonly<Record<StageName, () => React.ReactNode>> = {
  photo: PhotoPanel,
  scale: SizePanel,
  trace: EdgePanel,
  table: TablePanel,
  cuts: CutsPanel,
  pour: () => (
    <Suspense fallback={<p>{t('loading')}</p>}>
      <PourPanel />
    </Suspense>
  ),
  paper: PaperPanel,
}

/** Paper gathers what is open anywhere; the other stages show their own. */
function StageIssues({ stage }: { readonly stage: StageName }) {
  const own = useStageIssues(stage)
  const all = useIssues()
  if (stage !== 'pour') return <IssueList issues={stage === 'paper' ? all : own} />
  // A pour has much that is worth knowing: it is folded, so that it does not stand before the figures.
  const notes = own.filter(({ severity }) => severity === 'note')
  return (
    <>
      <IssueList issues={own.filter(({ severity }) => severity !== 'note')} />
      {notes.length > 0 && (
        <MoreInputs title={t('pour-notes', { count: notes.length })}>
          <IssueList issues={notes} />
        </MoreInputs>
      )}
    </>
  )
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
