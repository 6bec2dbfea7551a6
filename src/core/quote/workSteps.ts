/** Steps of a cast table in their usual order. Common practice, no source. */
export const WORK_STEPS = [
  'check-moisture',
  'clean-edges',
  'stabilise',
  'rough-cut',
  'rest-wood',
  'flatten-wood',
  'measure-again',
  'final-cuts',
  'dry-fit',
  'build-form',
  'leak-test',
  'level-form',
  'seal',
  'clamp',
  'pour',
  'top-up',
  'demould',
  'rest-cast',
  'flatten-cast',
  'keys-and-slots',
  'trim',
  'sand',
  'finish',
  'cure-finish',
  'deliver',
] as const

export type WorkStepId = (typeof WORK_STEPS)[number]

export interface WorkStep {
  readonly id: WorkStepId
  /** Hours of work. */
  readonly hours: number
  /** Days that must pass after it before the next. */
  readonly waitDays: number
}

/** A step may not come before these. Common practice, no source. */
export const STEP_NEEDS: Readonly<Record<WorkStepId, readonly WorkStepId[]>> = {
  'check-moisture': [],
  'clean-edges': ['check-moisture'],
  stabilise: ['clean-edges'],
  'rough-cut': ['check-moisture'],
  'rest-wood': ['rough-cut'],
  'flatten-wood': ['rough-cut', 'rest-wood', 'stabilise'],
  'measure-again': ['flatten-wood'],
  'final-cuts': ['measure-again'],
  'dry-fit': ['final-cuts', 'build-form'],
  'build-form': [],
  'leak-test': ['build-form'],
  'level-form': ['build-form'],
  seal: ['clean-edges', 'final-cuts', 'dry-fit'],
  clamp: ['seal', 'level-form', 'leak-test'],
  pour: ['clamp', 'seal', 'level-form'],
  'top-up': ['pour'],
  demould: ['pour', 'top-up'],
  'rest-cast': ['demould'],
  'flatten-cast': ['demould', 'rest-cast'],
  'keys-and-slots': ['flatten-cast'],
  trim: ['flatten-cast'],
  sand: ['flatten-cast', 'keys-and-slots', 'trim'],
  finish: ['sand'],
  'cure-finish': ['finish'],
  deliver: ['cure-finish'],
}

/** Hours and waits to begin with. Common practice, no source: the maker's own figures replace them. */
export const USUAL_STEPS: readonly WorkStep[] = [
  ['check-moisture', 0.5, 0],
  ['clean-edges', 3, 0],
  ['stabilise', 1, 1],
  ['rough-cut', 1, 0],
  ['rest-wood', 0, 3],
  ['flatten-wood', 2.5, 0],
  ['measure-again', 0.5, 0],
  ['final-cuts', 1, 0],
  ['build-form', 3, 0],
  ['dry-fit', 1, 0],
  ['leak-test', 0.5, 0],
  ['level-form', 0.5, 0],
  ['seal', 1, 0],
  ['clamp', 0.5, 0],
  ['pour', 3, 0],
  ['top-up', 0.5, 1],
  ['demould', 1.5, 0],
  ['rest-cast', 0, 2],
  ['flatten-cast', 3, 0],
  ['keys-and-slots', 2, 0],
  ['trim', 1, 0],
  ['sand', 5, 0],
  ['finish', 3, 1],
  ['cure-finish', 0, 7],
  ['deliver', 3, 0],
].map(([id, hours, waitDays]) => ({ id, hours, waitDays }) as WorkStep)
