import { defaultNames, type Plan } from '../core/plan'
import { newId } from './newId'

/** Longest name that the schema takes. */
const NAME_LIMIT = 200

/** The same plan as one of its own. */
export const asCopy = (plan: Plan): Plan => ({
  ...plan,
  id: newId(),
  name: defaultNames.copyOf(plan.name).slice(0, NAME_LIMIT),
})
