/**
 * What the maker should know about a pour, as data; core/plan makes the sentence. A `blocker` keeps a figure from
 * being given, a `warning` can ruin the pour or hurt someone, a `note` is worth knowing.
 */
export interface ResinNotice {
  readonly code: ResinNoticeCode
  readonly severity: 'blocker' | 'warning' | 'note'
  readonly values: Readonly<Record<string, string | number>>
}

/** Every code with its values; layers are counted from 1, hours from midnight before the first pour. */
export const RESIN_NOTICE_CODES = [
  // the sheet
  'sheet-is-example', // {sheetName}
  'figure-unusable', // {figure, value}: of the sheet, the cast or a layer set by hand
  'sheet-limit-below-reference', // {surfacePeakLimitC, referenceC}
  'sheet-not-reached', // {deepestLayerMm}: no rate explains the sheet's figures; the generic one is used
  'ratio-missing', // {}
  'ratio-not-positive', // {resin, hardener}
  'ratio-disagrees', // {statedHardenerPer100, foundHardenerPer100}: parts of hardener to 100 of resin by mass
  'densities-missing', // {}: mixing by mass (or by volume) and the weight cannot be given
  'mixed-density-disagrees', // {statedKgPerM3, foundKgPerM3}
  // the place
  'room-too-hot', // {roomC, coreLimitC}
  'room-colder-than-sheet', // {roomC, leastC}
  'resin-colder-than-sheet', // {resinC, leastC}
  'start-cooler-hour', // {startHour, coreC, betterHour, betterCoreC}
  // gaps and form
  'gaps-missing', // {}
  'gap-figure-unusable', // {gapName}
  'gap-wider-below', // {gapName, layer, depthMm, countsAsMm}
  'test-width-unknown', // {gapName, widthMm}
  'gap-wider-than-test', // {gapName, widthMm, testWidthMm}
  'cast-deeper-than-form', // {castDepthMm, formHeightMm}
  'form-sides-low', // {castDepthMm, formHeightMm, usualMm}
  // layers
  'kept-to-sheet', // {modelMm, sheetMm}
  'beyond-sheet', // {depthMm, sheetMm}
  'layer-deeper-than-limit', // {layer, depthMm, limitMm}
  'layer-thinner-than-least', // {layer, depthMm, leastMm}
  'layer-heavier-than-sheet', // {layer, massKg, greatestKg}
  'layers-too-many', // {layers, greatest}
  'layers-do-not-add-up', // {sumMm, castDepthMm}
  'layer-runs-hot', // {layer, coreC, limitC}
  'poured-on-hot-layer', // {layer, belowC, roomC}
  'poured-on-soft-layer', // {layer}
  'gels-later-than-sheet', // {layer, hours, leastHours}
  'gels-too-slowly', // {layer, hours}
  'window-missed', // {layer, hours, greatestHours}: scuff before pouring
  'peak-while-asleep', // {layer, hour}
  'pour-while-asleep', // {layer, hour}
  'thinner-cast-saves-a-pour', // {castDepthMm, thinnerByMm, layers}
  // mixing
  'handling-too-slow', // {layer, handlingMinutes, workingMinutes}
  'dye-over-greatest', // {dyeFraction, greatestFraction}
  'dye-uneven', // {percent}
  // pieces
  'piece-floats', // {pieceName, layer, forceN}
  'base-lifts', // {liftMm}
  'piece-figure-unusable', // {pieceName}
  // packs
  'packs-missing', // {}
  'pack-figure-unusable', // {packName}
  // log
  'log-entry-unusable', // {entryName}
  'log-too-short', // {pours, leastPours}
  'log-contradicts-itself', // {firstName, secondName}
  'log-scattered', // {factor}: typical factor between logged and computed rise
  'log-hotter-than-sheet', // {entryName, surfaceC, limitC}
] as const

export type ResinNoticeCode = (typeof RESIN_NOTICE_CODES)[number]

export const notice = (
  code: ResinNoticeCode,
  severity: ResinNotice['severity'],
  values: ResinNotice['values'] = {},
): ResinNotice => ({ code, severity, values })

export type Notices = readonly ResinNotice[]

/** A notice only where something is so. */
export const when = (is: boolean, found: ResinNotice): Notices => (is ? [found] : [])
