import type { ProductSheet } from './productSheet'

const COMMON = {
  isExample: true,
  resinDensityKgPerM3: 1130,
  hardenerDensityKgPerM3: 980,
  mixedDensityKgPerM3: null,
  ratioByMass: null,
  referenceC: 21,
  testWidthMm: null,
  leastRoomC: 18,
  leastResinC: 20,
  greatestDyeFraction: 0.05,
} as const

/**
 * Three invented products, to try the plan with. None is a product on sale; each figure must be replaced by that of
 * the sheet in hand. The sizes are common practice, no source.
 */
export const EXAMPLE_SHEETS: Readonly<Record<'slowCasting' | 'medium' | 'thinCoating', ProductSheet>> = {
  slowCasting: {
    ...COMMON,
    name: 'Example: slow casting resin',
    ratioByVolume: { resin: 2, hardener: 1 },
    deepestLayerMm: 50,
    surfacePeakLimitC: 49,
    peakHours: null,
    leastLayerMm: 10,
    workingTime: { minutes: 90, massKg: 1, temperatureC: 21 },
    recoatLeastHours: 24,
    recoatGreatestHours: 72,
    demouldHours: 72,
    greatestMassKg: 20,
    packs: [
      { name: '6 L', litres: 6, priceCents: 13_800 },
      { name: '24 L', litres: 24, priceCents: 49_900 },
    ],
  },
  medium: {
    ...COMMON,
    name: 'Example: medium resin',
    ratioByVolume: { resin: 2, hardener: 1 },
    deepestLayerMm: 20,
    surfacePeakLimitC: 50,
    peakHours: null,
    leastLayerMm: 5,
    workingTime: { minutes: 45, massKg: 0.5, temperatureC: 21 },
    recoatLeastHours: 10,
    recoatGreatestHours: 36,
    demouldHours: 48,
    greatestMassKg: 8,
    packs: [
      { name: '3 L', litres: 3, priceCents: 7200 },
      { name: '12 L', litres: 12, priceCents: 26_400 },
    ],
  },
  thinCoating: {
    ...COMMON,
    name: 'Example: thin coating resin',
    ratioByVolume: { resin: 1, hardener: 1 },
    deepestLayerMm: 6,
    surfacePeakLimitC: 45,
    peakHours: null,
    leastLayerMm: 1.5,
    workingTime: { minutes: 25, massKg: 0.2, temperatureC: 21 },
    recoatLeastHours: 4,
    recoatGreatestHours: 12,
    demouldHours: 24,
    greatestMassKg: 2,
    packs: [
      { name: '1 L', litres: 1, priceCents: 2600 },
      { name: '4 L', litres: 4, priceCents: 9400 },
    ],
  },
}
