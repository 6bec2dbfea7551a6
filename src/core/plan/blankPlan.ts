import { blankCosts, blankForm, blankRoom, blankShop, blankStanding, blankWood } from './blankBuild'
import { EXAMPLE_SHEETS, USUAL_CLEARANCE_MM } from '../resin'
import { PLAN_VERSION } from './planLimits'
import type { Cut, Option, Photo, Plan, Slab, TableSideName } from './schema'
import { defaultNames } from './text/en/names'

/** What a new slab and a new table start with, until the maker says otherwise. Common practice, no source. */
export const STARTING_VALUES = {
  tableLengthMm: 2000,
  tableWidthMm: 900,
  tableThicknessMm: 45,
  oversizeMm: 5,
  kerfMm: 3,
  leastJointMm: 6,
  resinLossFraction: 0.1,
  roomC: 21,
  firstPourHour: 9,
  handlingMinutes: 20,
  bucketKg: 10,
  formBaseMm: 18,
  barEveryMm: 500,
  packMarginFraction: 0.05,
  flatteningMm: 12,
  cleaningMm: 2,
  mostResinShare: 0.15,
  mostBandMm: 150,
} as const

/** Ends first, so that the long offcuts are as long as the table. The maker may reorder them. */
const FOOTPRINT_SIDES: readonly TableSideName[] = ['start', 'end', 'far', 'near']

/** The four cuts of a plain footprint, in the usual order of work. */
export const plainFootprintCuts = (kerfMm: number = STARTING_VALUES.kerfMm): readonly Cut[] =>
  FOOTPRINT_SIDES.map((side) => ({ kind: 'footprint', id: `cut-${side}`, side, kerfMm }))

/** Nothing said yet: an invented slow resin, marked as an example, poured as is usual. */
export const blankResin = (): Option['resin'] => ({
  sheet: EXAMPLE_SHEETS.slowCasting,
  castThicknessMm: null,
  lossFraction: STARTING_VALUES.resinLossFraction,
  clearanceMm: USUAL_CLEARANCE_MM,
  floodMm: null,
  underCupMm: 0,
  sealCoat: { kind: 'none' },
  measuredLitres: null,
  form: {
    heightMm: null,
    baseThicknessMm: STARTING_VALUES.formBaseMm,
    barEveryMm: STARTING_VALUES.barEveryMm,
  },
  woodDensityKgPerM3: null,
  room: { kind: 'steady', roomC: STARTING_VALUES.roomC },
  air: 'still',
  beneath: 'board-on-bench',
  resinC: null,
  start: { day: null, hour: STARTING_VALUES.firstPourHour },
  waking: { fromHour: 7, toHour: 22 },
  handlingMinutes: STARTING_VALUES.handlingMinutes,
  bucketKg: STARTING_VALUES.bucketKg,
  dye: null,
  layers: [],
  beyondSheet: false,
  haveLitres: 0,
  packMarginFraction: STARTING_VALUES.packMarginFraction,
  log: [],
})

/** Nothing said of how a slab was chosen. */
export const blankStock = (): Slab['stock'] => ({
  tape: { lengthMm: null, narrowestMm: null, widestMm: null },
  flatteningMm: STARTING_VALUES.flatteningMm,
  pourMoistureFraction: null,
  shrinkageFraction: null,
  rejected: null,
})

/** As much wood as possible, wherever. */
const blankCover = (): Option['cover'] => ({
  woodAt: 'anywhere',
  voids: 'welcome',
  grainWithinRad: null,
  mostResinShare: STARTING_VALUES.mostResinShare,
  cleaningMm: STARTING_VALUES.cleaningMm,
  mostBandMm: STARTING_VALUES.mostBandMm,
})

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
    cover: blankCover(),
    resin: blankResin(),
    room: blankRoom(),
    form: blankForm(),
    standing: blankStanding(),
    quote: blankCosts(),
  }
}

const blankSlab = (id: string, name: string, thicknessMm: number | null, capture: Slab['capture']): Slab => ({
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
  stock: blankStock(),
  wood: blankWood(),
  capture,
})

/** A slab of which nothing is known but its photo. */
export const blankPhotoSlab = (id: string, name: string, photo: Photo, thicknessMm: number | null): Slab =>
  blankSlab(id, name, thicknessMm, { kind: 'photo', photos: [photo], datum: null, traces: [] })

/** A slab that is to be measured by stations along a datum. */
export const blankStationSlab = (id: string, name: string, thicknessMm: number | null): Slab =>
  blankSlab(id, name, thicknessMm, { kind: 'stations', stations: [] })

/** A plan with one option and no slab. */
export const blankPlan = (id: string, optionId: string): Plan => ({
  format: 'waneline-plan',
  version: PLAN_VERSION,
  id,
  name: defaultNames.plan,
  note: '',
  invented: false,
  shop: blankShop(),
  slabs: [],
  options: [blankOption(optionId, defaultNames.option(1))],
})
