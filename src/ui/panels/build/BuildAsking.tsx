import { useEffect } from 'react'
import { useStore } from 'zustand'
import { askBuild } from '../../../state/buildDesk'
import { planStore } from '../../../state/planStore'
import { pourStore } from '../../../state/pourDesk'
import { sessionStore, type Stage } from '../../../state/sessionStore'
import { planResultOf } from '../../usePlanResult'

/** Elsewhere than at the stages that show it, the worker waits until the maker pauses. */
const PATIENCE_MS = 1500
const SHOWN_AT: ReadonlySet<Stage> = new Set<Stage>(['form', 'price', 'paper'])

/** Asks the worker for form, weight, work and price of every option: of the plan, never of a gesture's draft. */
export function BuildAsking() {
  const isShown = useStore(sessionStore, ({ stage }) => SHOWN_AT.has(stage))
  const plan = useStore(planStore, (state) => state.plan)
  const poured = useStore(pourStore, ({ answered }) => answered)
  useEffect(() => {
    const ask = () => {
      for (const [optionId, { buildTask }] of planResultOf(plan).options)
        if (buildTask.state === 'ready') askBuild(optionId, buildTask.value)
    }
    if (isShown) {
      ask()
      return undefined
    }
    const later = setTimeout(ask, PATIENCE_MS)
    return () => clearTimeout(later)
  }, [plan, poured, isShown])
  return null
}
