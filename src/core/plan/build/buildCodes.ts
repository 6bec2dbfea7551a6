/** What may be said of wood, form, weight, stance, work and price. Values are named beside each code. */
export const BUILD_CODES = [
  'build-species-unknown', // {}
  'build-moisture-missing', // {}
  'build-moisture-high', // {share, limitFraction}
  'build-moves', // {pieceName, changeMm}
  'build-thin-when-flat', // {flatMm, thicknessMm, leftMm}
  'build-thin-unless-ripped', // {flatMm, thicknessMm, pieceMm}
  'build-readings-few', // {count}
  'build-sheet-too-small', // {pieceName, lengthMm, widthMm}
  'build-sheets-short', // {}
  'build-sheets-unproven', // {}
  'build-form-round', // {massKg}
  'build-top-heavy', // {massKg, eachKg}
  'build-falls', // {}
  'build-tips', // {massKg, overhangMm}
  'build-no-feet', // {}
  'build-door', // {}
  'build-lift', // {}
  'build-turn', // {}
  'build-step-early', // {stepName, needName}
  'build-slab-unpriced', // {}
  'build-hours-unpriced', // {}
] as const

export type BuildCode = (typeof BUILD_CODES)[number]
