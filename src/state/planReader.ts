/** Checks what is read against the plan's schema: heavy, and fetched when there is something to read. */
export { parsePlan, readPlanText } from '../core/plan'
