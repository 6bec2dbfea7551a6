import { lazy, Suspense, useEffect } from 'react'
import { useStore } from 'zustand'
import { sessionStore } from '../../state/sessionStore'
import { PartBoundary } from '../errors/PartBoundary'
import { goToStage } from '../stages/goToStage'
import { STAGE_NAMES, type StageName } from '../stages/stageNames'
import { useStageMarks } from '../stages/useStageMarks'
import { t, withTexts } from '../text/t'
import { IssueList } from './IssueList'
import { MoreInputs } from './pour/MoreInputs'
import { useIssues, useStageIssues } from './useIssues'

/** Each stage's panel comes when it is first wanted; the picture and the figures that decide are there before it. */
const LATER = {
  slabs: async () => {
    const { SlabsPanel } = await withTexts(import('./cover/SlabsPanel'), import('../text/coverTexts'))
    return { default: SlabsPanel }
  },
  photo: async () => {
    const { PhotoPanel } = await withTexts(import('./PhotoPanel'), import('../text/slabTexts'))
    return { default: PhotoPanel }
  },
  scale: async () => {
    const { SizePanel } = await withTexts(import('./SizePanel'), import('../text/slabTexts'))
    return { default: SizePanel }
  },
  trace: async () => {
    const { EdgePanel } = await withTexts(import('./EdgePanel'), import('../text/slabTexts'))
    return { default: EdgePanel }
  },
  table: async () => {
    const { TablePanel } = await withTexts(import('./TablePanel'), import('../text/tableTexts'))
    return { default: TablePanel }
  },
  cuts: async () => {
    const { CutsPanel } = await withTexts(import('./CutsPanel'), import('../text/tableTexts'))
    return { default: CutsPanel }
  },
  pour: async () => {
    const { PourPanel } = await withTexts(import('./pour/PourPanel'), import('../text/pourTexts'))
    return { default: PourPanel }
  },
  form: async () => ({ default: (await import('./build/FormPanel')).FormPanel }),
  price: async () => ({ default: (await import('./build/PricePanel')).PricePanel }),
  paper: async () => {
    const { PaperPanel } = await withTexts(
      import('./PaperPanel'),
      import('../text/paperTexts'),
      import('../text/tableTexts'),
    )
    return { default: PaperPanel }
  },
} as const

const PANELS: Readonly<Record<StageName, React.ComponentType>> = {
  slabs: lazy(LATER.slabs),
  photo: lazy(LATER.photo),
  scale: lazy(LATER.scale),
  trace: lazy(LATER.trace),
  table: lazy(LATER.table),
  cuts: lazy(LATER.cuts),
  pour: lazy(LATER.pour),
  form: lazy(LATER.form),
  price: lazy(LATER.price),
  paper: lazy(LATER.paper),
}

/** Once the first view is up the others are fetched, so that a stage opens at a touch. */
const FETCH_AFTER_MS = 1500

function useOtherPanels(): void {
  useEffect(() => {
    const timer = setTimeout(() => {
      for (const fetchPanel of Object.values(LATER)) void fetchPanel()
    }, FETCH_AFTER_MS)
    return () => clearTimeout(timer)
  }, [])
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
  useOtherPanels()
  return (
    <div className="stage-panel" key={stage}>
      <div className="panel-head">
        <h2 id="stage-heading">{t(`stage-${stage}`)}</h2>
        <p className="panel-lead">{t(`lead-${stage}`)}</p>
      </div>
      <PartBoundary part={t(`stage-${stage}`)}>
        <StageIssues stage={stage} />
        <Suspense fallback={<p>{t('loading')}</p>}>
          <Panel />
        </Suspense>
        <GoOn stage={stage} />
      </PartBoundary>
    </div>
  )
}
