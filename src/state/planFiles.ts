export { keepMineAsCopy } from './autosave'
export { hydrate } from './hydrate'
export type { ImportOptions } from './importPhoto'
export { importPhoto } from './importPhoto'
export type { DemoName } from './loadDemo'
export { loadDemo } from './loadDemo'
export type { OpenedFile } from './openFile'
export { openFile } from './openFile'
export { getPhotoBytes, photoClient } from './photoDesk'
export type { KeptOriginal, PlanListing } from './planStorage'
export type { OpenedPlan, StoredTwin } from './plans'
export {
  deletePlan,
  duplicatePlan,
  keptFile,
  listKept,
  listPlans,
  loadTheirs,
  newPlan,
  openPlan,
  storedPlanFile,
} from './plans'
export { keepBothPlans, keepNewcomer, keepStoredPlan } from './twinPlans'
export type { SavedFile } from './savePlanFile'
export { savePlanFile } from './savePlanFile'
