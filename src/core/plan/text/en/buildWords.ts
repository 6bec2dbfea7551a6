import type { FormPartKind } from '../../../form'
import type { CostGroup, WorkStepId } from '../../../quote'
import type { WoodSource } from '../../../wood'
import type { TableSideName } from '../../schema'

const SIDES: Readonly<Record<TableSideName, string>> = {
  start: 'start',
  end: 'end',
  far: 'far side',
  near: 'near side',
}

const PARTS: Readonly<Record<FormPartKind, string>> = {
  base: 'Base',
  side: 'Side',
  backing: 'Backing',
  plate: 'Plate',
}

const STEPS: Readonly<Record<WorkStepId, string>> = {
  'check-moisture': 'Check the moisture',
  'clean-edges': 'Clean the edges, cut back what is soft',
  stabilise: 'Stabilise punky wood and cracks',
  'rough-cut': 'Rough cut or rip',
  'rest-wood': 'Let the wood rest',
  'flatten-wood': 'Flatten both faces evenly',
  'measure-again': 'Measure again',
  'final-cuts': 'Final cuts',
  'dry-fit': 'Dry fit, with its photo',
  'build-form': 'Saw and build the form',
  'leak-test': 'Dam and test for leaks',
  'level-form': 'Level the form',
  seal: 'Seal the wood',
  clamp: 'Clamp and weigh down',
  pour: 'Pour',
  'top-up': 'Top up',
  demould: 'Take it out of the form',
  'rest-cast': 'Let the cast rest',
  'flatten-cast': 'Flatten the cast',
  'keys-and-slots': 'Keys and slots',
  trim: 'Trim to size',
  sand: 'Sand',
  finish: 'Finish both faces alike',
  'cure-finish': 'Let the finish cure',
  deliver: 'Deliver',
}

const GROUPS: Readonly<Record<CostGroup, string>> = {
  wood: 'Wood',
  resin: 'Resin',
  sheets: 'Sheets',
  consumables: 'Consumables',
  blades: 'Blades',
  finish: 'Finish',
  keys: 'Keys',
  hours: 'Hours',
  base: 'Base',
  delivery: 'Delivery',
}

const SOURCES: Readonly<Record<WoodSource, string>> = {
  'handbook-4-3': 'Wood Handbook FPL-GTR-190, table 4–3',
  'handbook-4-4': 'Wood Handbook FPL-GTR-190, table 4–4, as a copy shows it',
  'handbook-5-5b': 'Wood Handbook FPL-GTR-190, table 5–5b',
  'handbook-5-3-copy': 'Wood Handbook, table 5–3b, as copied by others',
  'handbook-13-5-checked': 'Wood Handbook, table 4–3 from memory, checked against table 13–5',
  'from-memory': 'Wood Handbook, from memory',
  own: 'your own figure',
}

/** What form, work and money are called, on screen and on paper. */
export const buildWords = {
  part: (kind: FormPartKind, side: TableSideName | null, number: number) =>
    `${PARTS[kind]}${side === null ? '' : `, ${SIDES[side]}`}${number === 1 && side !== null ? '' : ` ${number}`}`,
  plate: (number: number) => `Plate under void ${number}`,
  step: (id: WorkStepId) => STEPS[id],
  group: (group: CostGroup) => GROUPS[group],
  source: (source: WoodSource) => SOURCES[source],
  slab: (name: string) => (name === '' ? 'Slab' : `Slab: ${name}`),
  resin: (name: string) => (name === '' ? 'Resin' : name),
  sheet: (name: string, size: string) => (name === '' ? `Board ${size}` : name),
  caulk: 'Caulk',
  jointTape: 'Tape over joints',
  release: 'Release coat',
  dripSheet: 'Drip sheet',
  screws: 'Screws',
  blades: 'Blades, by the metre sawn',
  finish: (name: string) => (name === '' ? 'Finish' : name),
  keys: 'Butterfly keys',
  base: 'Base or legs',
  delivery: 'Delivery and carrying in',
} as const
