import { useEffect } from 'react'
import { useStore } from 'zustand'
import { askPour } from '../../../state/pourDesk'
import { planStore } from '../../../state/planStore'
import { sessionStore } from '../../../state/sessionStore'
import { useOption } from '../../useActive'
import { planResultOf } from '../../usePlanResult'

/** Elsewhere than at the stages that show the pour, the worker waits until the maker pauses. */
const PATIENCE_MS = 1200

/** Asks the worker for the pour of the option that is worked on; a draft only where its pour is looked at. */
export function PourAsking() {
  const stage = useStore(sessionStore, (session) => session.stage)
  const draft = useStore(sessionStore, (session) => session.draft)
  const plan = useStore(planStore, (state) => state.plan)
  const optionId = useOption()?.id ?? ''
  const asked = stage === 'pour' ? (draft ?? plan) : plan
  const part = planResultOf(asked).options.get(optionId)?.pourTask
  const task = part?.state === 'ready' ? part.value : null
  const isShown = stage === 'pour' || stage === 'paper'
  useEffect(() => {
    if (task === null) return undefined
    if (isShown) {
      askPour(optionId, task)
      return undefined
    }
    const later = setTimeout(() => askPour(optionId, task), PATIENCE_MS)
    return () => clearTimeout(later)
  }, [task, optionId, isShown])
  return null
}
