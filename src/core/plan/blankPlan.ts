import {
  PLAN_VERSION,
  type Cut,
  type Option,
  type Photo,
  type Plan,
  type Slab,
  type TableSideName,
} from './schema'
import { defaultNames } from './text/en/names'

/** What a new slab and a new table start with, until the maker says otherwise. Common practice, no source. */
export const STARTING_VALUES = {
  slabThicknessMm: 52,
  tableLengthMm: 2000,
  tableWidthMm: 900,
  tableThicknessMm: 45,
  oversizeMm: 5,
  kerfMm: 3,
  leastJointMm: 6,
  resinLossFraction: 0.1,
  /** Cast epoxy lies near this; the product's own sheet decides. */
  resinDensityKgPerM3: 1100,
} as const

/** Ends first, so that the long offcuts are as long as the table. The maker may reorder them. */
const FOOTPRINT_SIDES: readonly TableSideName[] = ['start', 'end', 'far', 'near']

/** The four cuts of a plain footprint, in the usual order of work. */
export const plainFootprintCuts = (kerfMm: number = STARTING_VALUES.kerfMm): readonly Cut[] =>
  FOOTPRINT_SIDES.map((side) => ({ kind: 'footprint', id: `cut-${side}`, side, kerfMm }))

/** A table not yet laid on any slab. */
export function blankOption(id: string, name: string): Option {
  const side = { finish: 'filled', oversizeMm: STARTING_VALUES.oversizeMm } as const
  return {
    id,
    name,
    table: {
      outline: {
        kind: 'rectangle',
        lengthMm: STARTING_VALUES.tableLengthMm,
        widthMm: STARTING_VALUES.tableWidthMm,
      },
      thicknessMm: STARTING_VALUES.tableThicknessMm,
      sides: { start: side, end: side, far: side, near: side },
    },
    footprint: null,
    cuts: plainFootprintCuts(),
    pieces: [],
    placements: [],
    leastJointMm: STARTING_VALUES.leastJointMm,
    resin: {
      productName: '',
      castThicknessMm: null,
      lossFraction: STARTING_VALUES.resinLossFraction,
      densityKgPerM3: STARTING_VALUES.resinDensityKgPerM3,
      pricePerLitreCents: null,
    },
  }
}

const blankSlab = (id: string, name: string, thicknessMm: number, capture: Slab['capture']): Slab => ({
  id,
  name,
  tag: '',
  species: null,
  thicknessMm,
  moistureFraction: null,
  priceCents: null,
  marks: [],
  tapedDistances: [],
  boards: [],
  rules: [],
  flatness: { kind: 'unknown' },
  capture,
})

/** A slab of which nothing is known but its photo. */
export const blankPhotoSlab = (id: string, name: string, photo: Photo, thicknessMm: number): Slab =>
  blankSlab(id, name, thicknessMm, { kind: 'photo', photos: [photo], datum: null, traces: [] })

/** A slab that is to be measured by stations along a datum. */
export const blankStationSlab = (id: string, name: string, thicknessMm: number): Slab =>
  blankSlab(id, name, thicknessMm, { kind: 'stations', stations: [] })

/** A plan with one option and no slab. */
export const blankPlan = (id: string, optionId: string): Plan => ({
  format: 'waneline-plan',
  version: PLAN_VERSION,
  id,
  name: defaultNames.plan,
  note: '',
  invented: false,
  slabs: [],
  options: [blankOption(optionId, defaultNames.option(1))],
})
