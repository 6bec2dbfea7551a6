export const TABLE_SIDES = ['start', 'end', 'far', 'near'] as const

export type TableSide = (typeof TABLE_SIDES)[number]

/** sawn: wood all along, cut straight; filled: straight, with resin where wood is short; live: the live edge is kept. */
export type SideFinish = 'sawn' | 'filled' | 'live'

export interface SideChoice {
  readonly finish: SideFinish
  readonly oversizeMm: number
}

export type SideChoices = Readonly<Record<TableSide, SideChoice>>

/** The two long sides of the table frame run along x, the start and the end along y. */
export const isAlongX = (side: TableSide): boolean => side === 'far' || side === 'near'
