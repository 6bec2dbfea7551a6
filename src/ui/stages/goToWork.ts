import { planStore } from '../../state/planStore'
import { sessionStore } from '../../state/sessionStore'
import { planResultOf } from '../usePlanResult'
import { goToStage } from './goToStage'
import { stageMarks } from './stageMarks'
import { STAGE_NAMES } from './stageNames'

/** After a job was opened: turns to the first stage that needs something, or to the table when all of it stands. */
export function goToWork(): void {
  const { plan } = planStore.getState()
  const { slabId, optionId, notice } = sessionStore.getState()
  const marks = stageMarks({ plan, result: planResultOf(plan), slabId, optionId })
  goToStage(STAGE_NAMES.find((stage) => stage !== 'slabs' && marks[stage] === 'needs') ?? 'table')
  // What opening the job had to say is still to be read.
  sessionStore.setState({ notice })
}
