export type { Cut, Option, Photo, Plan, Slab, Table, TableSideName, Trace } from './schema'
export { GREATEST_LENGTH_MM, PLAN_VERSION, planSchema } from './schema'
export {
  STARTING_VALUES,
  blankOption,
  blankPhotoSlab,
  blankPlan,
  blankStationSlab,
  plainFootprintCuts,
} from './blankPlan'
export { defaultNames } from './text/en/names'
