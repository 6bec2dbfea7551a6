/** The stages in the order of the work. */
export const STAGE_NAMES = [
  'slabs',
  'photo',
  'scale',
  'trace',
  'table',
  'cuts',
  'pour',
  'form',
  'price',
  'paper',
] as const

export type StageName = (typeof STAGE_NAMES)[number]
