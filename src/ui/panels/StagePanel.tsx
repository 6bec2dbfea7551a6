import { lazy, Suspense } from 'react'
import { useStore } from 'zustand'
import { sessionStore } from '../../state/sessionStore'
import { PartBoundary } from '../errors/PartBoundary'
import { goToStage } from '../stages/goToStage'
import { STAGE_NAMES, type StageName } from '../stages/stageNames'
import { useStageMarks } from '../stages/useStageMarks'
import { t } from '../text/t'
import { CutsPanel } from './CutsPanel'
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

const EdgePanel = lazy(async () => {
  const { EdgePanel: loaded } = await import('./EdgePanel')
  return { default: loaded }
})

const SlabsPanel = lazy(async () => {
  const { SlabsPanel: loaded } = await import('./cover/SlabsPanel')
  return { default: loaded }
})

const PANELS: Readonly<Record<StageName, () => React.ReactNode>> = {
  slabs: () => (
    <Suspense fallback={<p>{t('loading')}</p>}>
      <SlabsPanel />
    </Suspense>
  ),
  photo: PhotoPanel,
  scale: SizePanel,
  trace: () => (
    <Suspense fallback={<p>{t('loading')}</p>}>
      <EdgePanel />
    </Suspense>
  ),
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

/** The way on, at the end of what is to be read; the photo has its own, beside what it asks for. */
function GoOn({ stage }: { readonly stage: StageName }) {
  const marks = useStageMarks()
  const next = stage === 'photo' ? undefined : STAGE_NAMES[STAGE_NAMES.indexOf(stage) + 1]
  if (next === undefined) return null
  const isDone = marks[stage] === 'done' || marks[stage] === 'ready'
  return (
    <div className="button-row">
      <button
        type="button"
        className={`button ${isDone ? 'button-main' : ''}`}
        onClick={() => goToStage(next)}
      >
        {t('go-on-to', { stage: t(`stage-${next}`) })}
      </button>
    </div>
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
        <GoOn stage={stage} />
      </PartBoundary>
    </div>
  )
}
