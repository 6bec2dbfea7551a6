import { EXAMPLE_SHEETS, gapBetween, type PourPlanInput, type PourSetting } from '../../src/core/resin'

/** Still air at a steady temperature, board and bench beneath. */
export const settingAt = (roomC: number): PourSetting => ({
  room: { kind: 'steady', roomC },
  air: 'still',
  beneath: 'board-on-bench',
  woodWPerMK: 0.15,
})

/** An invented table: a band of resin down its middle and a leaning edge, filled with the example of a slow resin. */
export const pourCase = (castDepthMm: number, setting: PourSetting): PourPlanInput => ({
  sheet: EXAMPLE_SHEETS.slowCasting,
  gaps: [
    gapBetween(
      'river',
      'joint',
      { heightMm: 0, areaMm2: 300_000, widestMm: 220, narrowestMm: 120 },
      { heightMm: castDepthMm, areaMm2: 340_000, widestMm: 240, narrowestMm: 130 },
    ),
    gapBetween(
      'far edge',
      'edge',
      { heightMm: 0, areaMm2: 60_000, widestMm: 60, narrowestMm: 25 },
      { heightMm: castDepthMm, areaMm2: 70_000, widestMm: 65, narrowestMm: 30 },
    ),
  ],
  castDepthMm,
  leastCastDepthMm: null,
  formHeightMm: castDepthMm + 25,
  measuredLitres: null,
  lossFraction: 0.07,
  setting,
  resinC: null,
  firstStartHour: 8,
  day: { fromHour: 7, toHour: 22 },
  handlingMinutes: 30,
  bucketKg: 12,
  dye: { kind: 'grams', gramsPerLitre: 2 },
  pieces: [{ name: 'half', areaMm2: 700_000, thicknessMm: castDepthMm, densityKgPerM3: 640, lengthMm: 2200 }],
  base: null,
  packMarginFraction: 0.05,
  haveLitres: 0,
  layers: [],
  beyondSheet: false,
})
