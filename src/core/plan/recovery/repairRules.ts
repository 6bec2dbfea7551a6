import { blankShop, blankWood } from '../blankBuild'
import { STARTING_VALUES, blankOption, blankStock, plainFootprintCuts } from '../blankPlan'
import { defaultNames } from '../text/en/names'

/** What is done with a part of a plan that does not fit the schema. */
export type RepairRule =
  /** The item leaves its list; `code` is the sentence that says so. */
  | { readonly kind: 'drop'; readonly code: string }
  /** The value is replaced by a harmless one; `place` is that in the list above it. `code` where the loss has a sentence of its own. */
  | {
      readonly kind: 'reset'
      readonly value: (parent: unknown, place: number) => unknown
      readonly code?: string
    }

const drop = (code: string): RepairRule => ({ kind: 'drop', code })
const reset = (value: unknown, code?: string): RepairRule => ({
  kind: 'reset',
  value: () => value,
  ...(code === undefined ? {} : { code }),
})

const option = blankOption('blank', '')
const emptyCapture = { kind: 'photo', photos: [], datum: null, traces: [] }

const hasKey = (parent: unknown, key: string): boolean =>
  typeof parent === 'object' && parent !== null && Object.hasOwn(parent, key)

/** A slab whose kind of capture was spoilt is still recognised by what it holds. */
const captureKind: RepairRule = {
  kind: 'reset',
  value: (parent) => (hasKey(parent, 'stations') ? 'stations' : 'photo'),
}

/** Two of the same are told apart afterwards (repairReferences). */
const freshId: RepairRule = { kind: 'reset', value: (_, place) => `recovered-${place + 1}` }

const side = reset(option.table.sides.far)

/** Each value of a part by itself to what a new option has there. */
const resetsOf = (where: string, part: object): readonly (readonly [string, RepairRule])[] =>
  Object.entries(part).map(([key, value]) => [`${where}/${key}`, reset(value)])

/**
 * The smallest broken entity goes, the rest stays: the rule with the longest pattern that a broken place lies in is
 * the one that is used. `*` stands for a place in a list.
 */
export const REPAIR_RULES: ReadonlyMap<string, RepairRule> = new Map([
  ['id', reset('recovered')],
  ['name', reset(defaultNames.unnamed)],
  ['note', reset('')],
  ['invented', reset(false)],
  ['shop', reset(blankShop())],
  ...resetsOf('shop', blankShop()),
  ...resetsOf('shop/prices', blankShop().prices),
  ...resetsOf('shop/finish', blankShop().finish),
  ['shop/steps/*', drop('lost-step')],
  ['shop/sheets/*', drop('lost-sheet')],
  ['slabs', reset([], 'lost-slabs')],
  ['options', reset([], 'lost-options')],

  ['slabs/*', drop('lost-slab')],
  ['slabs/*/id', freshId],
  ['slabs/*/name', reset(defaultNames.unnamed)],
  ['slabs/*/tag', reset('')],
  ['slabs/*/species', reset(null)],
  ['slabs/*/thicknessMm', reset(null)],
  ['slabs/*/moistureFraction', reset(null)],
  ['slabs/*/priceCents', reset(null)],
  ['slabs/*/marks', reset([], 'lost-marks')],
  ['slabs/*/marks/*', drop('lost-mark')],
  ['slabs/*/marks/*/name', reset(defaultNames.unnamed)],
  ['slabs/*/tapedDistances', reset([], 'lost-distances')],
  ['slabs/*/tapedDistances/*', drop('lost-distance')],
  ['slabs/*/boards', reset([], 'lost-boards')],
  ['slabs/*/boards/*', drop('lost-board')],
  ['slabs/*/boards/*/name', reset(defaultNames.unnamed)],
  ['slabs/*/rules', reset([], 'lost-rules')],
  ['slabs/*/rules/*', drop('lost-rule')],
  ['slabs/*/rules/*/name', reset(defaultNames.unnamed)],
  ['slabs/*/flatness', reset({ kind: 'unknown' })],
  ['slabs/*/stock', reset(blankStock())],
  ...resetsOf('slabs/*/stock', blankStock()),
  ['slabs/*/wood', reset(blankWood())],
  ...resetsOf('slabs/*/wood', blankWood()),
  ['slabs/*/wood/heights/*', drop('lost-height')],
  ['slabs/*/capture', reset(emptyCapture, 'lost-capture')],
  ['slabs/*/capture/kind', captureKind],
  ['slabs/*/capture/photos', reset([], 'lost-photos')],
  ['slabs/*/capture/photos/*', drop('lost-photo')],
  ['slabs/*/capture/photos/*/fileName', reset('')],
  ['slabs/*/capture/photos/*/focalLength35mm', reset(null)],
  ['slabs/*/capture/photos/*/face', reset('top')],
  ['slabs/*/capture/photos/*/observations', reset([], 'lost-observations')],
  ['slabs/*/edges', reset({ bevel: { kind: 'upright' }, faceUpInForm: 'top' })],
  ['slabs/*/capture/photos/*/observations/*', drop('lost-observation')],
  ['slabs/*/capture/photos/*/observations/*/sdPx', reset(null)],
  ['slabs/*/capture/photos/*/observations/*/refinement', reset({ kind: 'none' })],
  ['slabs/*/capture/photos/*/straightLines', reset([], 'lost-lines')],
  ['slabs/*/capture/photos/*/straightLines/*', drop('lost-line')],
  ['slabs/*/capture/photos/*/straightLines/*/sdPx', reset(null)],
  ['slabs/*/capture/datum', reset(null, 'lost-datum')],
  ['slabs/*/capture/traces', reset([], 'lost-traces')],
  ['slabs/*/capture/traces/*', drop('lost-trace')],
  ['slabs/*/capture/traces/*/meaning/depth', reset({ kind: 'through' }, 'reset-void-depth')],
  ['slabs/*/capture/traces/*/meaning/cutBackMm', reset(0)],
  ['slabs/*/capture/traces/*/ringPx/*', drop('lost-trace-points')],
  ['slabs/*/capture/traces/*/origin', reset({ kind: 'hand' })],
  ['slabs/*/capture/stations', reset([], 'lost-stations')],
  ['slabs/*/capture/stations/*', drop('lost-station')],

  ['options/*', drop('lost-option')],
  ['options/*/id', freshId],
  ['options/*/name', reset(defaultNames.unnamed)],
  ['options/*/table', reset(option.table)],
  ['options/*/table/outline', reset(option.table.outline)],
  ['options/*/table/outline/lengthMm', reset(STARTING_VALUES.tableLengthMm)],
  ['options/*/table/outline/widthMm', reset(STARTING_VALUES.tableWidthMm)],
  ['options/*/table/thicknessMm', reset(STARTING_VALUES.tableThicknessMm)],
  ['options/*/table/sides', reset(option.table.sides)],
  ['options/*/table/sides/start', side],
  ['options/*/table/sides/end', side],
  ['options/*/table/sides/far', side],
  ['options/*/table/sides/near', side],
  ['options/*/footprint', reset(null, 'lost-footprint')],
  ['options/*/cuts', reset(plainFootprintCuts(), 'lost-cuts')],
  ['options/*/cuts/*', drop('lost-cut')],
  ['options/*/cuts/*/kerfMm', reset(STARTING_VALUES.kerfMm)],
  ['options/*/pieces', reset([], 'lost-pieces')],
  ['options/*/pieces/*', drop('lost-piece')],
  ['options/*/pieces/*/name', reset(defaultNames.unnamed)],
  ['options/*/placements', reset([], 'lost-placements')],
  ['options/*/placements/*', drop('lost-placement')],
  ['options/*/leastJointMm', reset(STARTING_VALUES.leastJointMm)],
  ['options/*/cover', reset(option.cover)],
  ...resetsOf('options/*/cover', option.cover),
  ['options/*/resin', reset(option.resin)],
  ...resetsOf('options/*/resin', option.resin),
  ...resetsOf('options/*/resin/sheet', option.resin.sheet),
  ['options/*/resin/sheet/packs/*', drop('lost-pack')],
  ...resetsOf('options/*/resin/form', option.resin.form),
  ['options/*/resin/layers', reset([], 'lost-layers')],
  ['options/*/resin/log', reset([], 'lost-logged-pours')],
  ['options/*/resin/log/*', drop('lost-logged-pour')],
  ...(['room', 'form', 'standing', 'quote'] as const).flatMap((key) => [
    [`options/*/${key}`, reset(option[key])] as const,
    ...resetsOf(`options/*/${key}`, option[key]),
  ]),
  ['options/*/quote/own/*', drop('lost-cost')],
])
