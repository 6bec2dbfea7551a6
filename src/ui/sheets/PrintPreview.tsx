import { useDeferredValue, useMemo } from 'react'
import { useStore } from 'zustand'
import { buildCutSheets, type Plan, type PlanResult, type SheetKind, sheetText } from '../../core/plan'
import type { PaperName, Sheet } from '../../core/drawing'
import type { LengthDisplay } from '../../core/units'
import { buildStore } from '../../state/buildDesk'
import { planStore } from '../../state/planStore'
import { pourStore } from '../../state/pourDesk'
import { sessionStore } from '../../state/sessionStore'
import { planResultOf } from '../usePlanResult'
import { useOption } from '../useActive'
import { useDisplay } from '../text/useDisplay'
import { todayText } from '../panels/paper/paperWork'
import { usePaper } from '../panels/paper/usePaper'
import { PrintJob, PrintSheets } from './PrintSheets'

interface Job {
  readonly plan: Plan
  readonly result: PlanResult
  readonly optionId: string | null
  readonly display: LengthDisplay
  readonly paper: PaperName
  readonly kinds: readonly SheetKind[]
}

function sheetsOf({ plan, result, optionId, display, paper, kinds }: Job): readonly Sheet[] {
  const option = plan.options.find(({ id }) => id === optionId)
  const slab = plan.slabs.find(({ id }) => id === option?.footprint?.slabId)
  if (option === undefined || slab === undefined) return []
  return buildCutSheets({
    plan,
    option,
    slab,
    result,
    display,
    paper,
    kinds,
    dateText: todayText(),
    text: sheetText,
  })
}

interface PaperJob {
  readonly sheets: readonly Sheet[]
  readonly paper: PaperName
  readonly isWaiting: boolean
}

/** The sheets of the option that is worked on, as they will be printed. The plan itself, never a gesture's draft. */
function usePaperJob(): PaperJob {
  const plan = useDeferredValue(useStore(planStore, (state) => state.plan))
  const paper = usePaper()
  const kinds = useStore(sessionStore, (session) => session.sheets)
  const optionId = useOption()?.id ?? null
  const display = useDisplay()
  // An answer of the worker changes the results of a plan that is the same.
  useStore(pourStore, (state) => state.answered)
  useStore(buildStore, (state) => state.answered)
  const result = planResultOf(plan)
  const isBusy = useStore(pourStore, (state) => state.isBusy)
  const sheets = useMemo(
    () => sheetsOf({ plan, result, optionId, display, paper, kinds }),
    [plan, result, optionId, display, paper, kinds],
  )
  const pour = result.options.get(optionId ?? '')?.pour
  return { sheets, paper, isWaiting: isBusy && pour?.state === 'pending' }
}

export function PrintPreview() {
  const job = usePaperJob()
  return job.sheets.length === 0 ? <p>{sheetText.sheetNothingYet}</p> : <PrintSheets {...job} />
}

/** The pages alone, for the browser's own print command at a stage that shows no paper. */
export function PrintPages() {
  const { sheets, paper } = usePaperJob()
  return sheets.length === 0 ? null : <PrintJob sheets={sheets} paper={paper} />
}
