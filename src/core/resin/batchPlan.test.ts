import { describe, expect, it } from 'vitest'
import { batchDye, batchPlan, dyeSpread, workingMinutes, type BatchCase } from './batchPlan'
import { bucketHeat } from './bucketHeat'
import { EXAMPLE_SHEETS } from './exampleSheets'
import { mixShares } from './mixShares'
import { GENERIC_CHEMISTRY } from './resinChemistry'

const sheet = EXAMPLE_SHEETS.slowCasting
const chemistry = { ...GENERIC_CHEMISTRY, referenceRatePerS: 5.7e-6, referenceC: 21 }
const shares = mixShares(sheet)
const base: BatchCase = {
  sheet,
  shares,
  chemistry,
  litres: 30,
  roomC: 21,
  resinC: 21,
  handlingMinutes: 30,
  bucketKg: null,
  dye: null,
}

describe('batchPlan', () => {
  it('RES-16 the fewest batches that the greatest mass and the bucket allow', () => {
    // 30 L of the example weigh 32.4 kg: two of at most 20 kg, three of at most 12.
    expect(batchPlan(base).count).toBe(2)
    expect(batchPlan({ ...base, bucketKg: 12 }).count).toBe(3)
    expect(batchPlan({ ...base, bucketKg: 10.8 }).count).toBe(3)
  })

  it('RES-16 batches are equal and add up, in litres and in both parts', () => {
    const { count, litresEach, kgEach, partsEach } = batchPlan({ ...base, bucketKg: 7 })
    expect(count * litresEach).toBeCloseTo(30, 9)
    expect((partsEach.resinLitres ?? NaN) + (partsEach.hardenerLitres ?? NaN)).toBeCloseTo(litresEach, 12)
    expect((partsEach.resinKg ?? NaN) + (partsEach.hardenerKg ?? NaN)).toBeCloseTo(kgEach ?? NaN, 12)
  })

  it('RES-16 in the heat smaller batches are called for, so that each lasts as long as it is handled', () => {
    // A sheet without a working time: only the bucket's own heat limits the batch.
    const lasts = (bucketHeat(chemistry, 16.2, 27, 27).plus5Hours ?? NaN) * 60
    const wish = { ...base, sheet: { ...sheet, workingTime: null }, handlingMinutes: lasts + 1 }
    const cool = batchPlan(wish)
    const warm = batchPlan({ ...wish, roomC: 27, resinC: 27 })
    expect(cool.count).toBe(2)
    expect(warm.count).toBeGreaterThan(2)
    expect(warm.isInTime).toBe(true)
    expect(warm.plus5Minutes ?? Infinity).toBeGreaterThanOrEqual(lasts + 1)
    expect(cool.plus5Minutes ?? Infinity).toBeGreaterThan(warm.plus5Minutes ?? Infinity)
  })

  it('RES-16 handling that no batch lasts is said, and the batches are those of the greatest mass', () => {
    const hopeless = batchPlan({ ...base, handlingMinutes: 200 })
    expect(hopeless).toMatchObject({ isInTime: false, count: 2 })
  })

  it('RES-16 without densities litres are given and masses are not', () => {
    const blind = mixShares({ ...sheet, resinDensityKgPerM3: null })
    const found = batchPlan({ ...base, shares: blind })
    expect(found.kgEach).toBeNull()
    expect(found.partsEach).toMatchObject({ resinKg: null, hardenerKg: null })
    expect(found.litresEach).toBeGreaterThan(0)
  })

  it('RES-16 the working time is that of the sheet at its own mass and temperature, and less when heavier or hotter', () => {
    const time = (massKg: number, roomC: number): number =>
      workingMinutes(sheet, chemistry, { massKg, roomC, resinC: roomC }) ?? NaN
    expect(Math.abs(time(1, 21) - 90)).toBeLessThan(1.5)
    expect(time(15, 21)).toBeLessThan(time(1, 21))
    expect(time(1, 30)).toBeLessThan(0.7 * time(1, 21))
    expect(time(0.1, 12)).toBeLessThanOrEqual(90)
  })

  it('RES-16 a sheet without a working time gives none; without a chemistry it is the sheet’s', () => {
    const bucket = { massKg: 5, roomC: 21, resinC: 21 }
    expect(workingMinutes({ ...sheet, workingTime: null }, chemistry, bucket)).toBeNull()
    expect(workingMinutes(sheet, null, bucket)).toBe(90)
  })
})

describe('dye', () => {
  it('RES-16 by mass: 2 g a litre in 5 L are 10 g, two thousandths of 5 kg', () => {
    expect(batchDye({ kind: 'grams', gramsPerLitre: 2 }, 5, 5)).toEqual({
      grams: 10,
      drops: null,
      gramsPerLitre: 2,
      massFraction: 0.002,
    })
  })

  it('RES-16 drops are whole, and the dose that they really give is told', () => {
    const dye = batchDye({ kind: 'drops', dropsPerLitre: 3, gramsPerDrop: 0.05 }, 2.2, 2.4)
    expect(dye.drops).toBe(7)
    expect(dye.gramsPerLitre).toBeCloseTo(0.35 / 2.2, 12)
  })

  it('RES-16 never less than a drop', () => {
    expect(batchDye({ kind: 'drops', dropsPerLitre: 1, gramsPerDrop: 0.05 }, 0.2, 0.2).drops).toBe(1)
  })

  it('RES-16 doses that differ from layer to layer are measured', () => {
    const dye = { kind: 'drops', dropsPerLitre: 1, gramsPerDrop: 0.05 } as const
    const batches = [2.4, 2.6].map((litres) => batchPlan({ ...base, litres, dye }))
    // 2 drops in 2.4 L and 3 in 2.6 L.
    expect(dyeSpread(batches)).toBeCloseTo((3 / 2.6 - 2 / 2.4) / ((3 / 2.6 + 2 / 2.4) / 2), 9)
    expect(dyeSpread([batchPlan(base)])).toBe(0)
  })
})
