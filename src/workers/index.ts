export { PhotoClient } from './photoClient'
export type { PhotoSize, ReducedPhoto } from './protocol'
export type { JobOptions } from './workerLink'
export { JobProblem } from './workerLink'
