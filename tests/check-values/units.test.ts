import { multiply, unit, type Unit } from 'mathjs'
import { describe, expect, it } from 'vitest'
import * as units from '../../src/core/units'
import rows from './units.json'

/** The conversions by name, as the rows name them. */
const CONVERSIONS = {
  boardFeetFromMm3: units.boardFeetFromMm3,
  celsiusToFahrenheit: units.celsiusToFahrenheit,
  cubicFeetToLitres: units.cubicFeetToLitres,
  cubicInchesToLitres: units.cubicInchesToLitres,
  degreesToRadians: units.degreesToRadians,
  feetToMm: units.feetToMm,
  imperialFluidOuncesToLitres: units.imperialFluidOuncesToLitres,
  imperialGallonsToLitres: units.imperialGallonsToLitres,
  inchToMm: units.inchToMm,
  kgToOunces: units.kgToOunces,
  litresToImperialGallons: units.litresToImperialGallons,
  litresToUsFluidOunces: units.litresToUsFluidOunces,
  litresToUsGallons: units.litresToUsGallons,
  mm2ToM2: units.mm2ToM2,
  mm2ToSquareFeet: units.mm2ToSquareFeet,
  mm3FromBoardFeet: units.mm3FromBoardFeet,
  mm3ToLitres: units.mm3ToLitres,
  pascalsToPsi: units.pascalsToPsi,
  poundsPerCubicFootToKgPerM3: units.poundsPerCubicFootToKgPerM3,
  poundsToKg: units.poundsToKg,
  psiToPascals: units.psiToPascals,
  usFluidOuncesToLitres: units.usFluidOuncesToLitres,
  usGallonsToLitres: units.usGallonsToLitres,
}

const conversionNamed = (name: string): ((value: number) => number) => {
  const found = Object.entries(CONVERSIONS).find(([key]) => key === name)
  if (found === undefined) throw new Error(`no conversion ${name}`)
  return found[1]
}

const relativeError = (value: number, truth: number): number => Math.abs(value / truth - 1)

type Row = (typeof rows)[number]

const agrees = (convert: (value: number) => number, row: Row): boolean =>
  relativeError(convert(row.in), row.expect) <= Math.max(row.relTolerance, 2 * Number.EPSILON)

describe('published and worked values', () => {
  it.each(rows)('UNI-1 UNI-2 $id: $conversion($in) is $expect $unit', (row) => {
    expect(agrees(conversionNamed(row.conversion), row)).toBe(true)
  })

  it('UNI-1 every row names its source: a title and how it was read, or the working', () => {
    for (const { source } of rows) {
      const told = source.kind === 'by-hand' ? [source.working] : [source.title, source.read]
      expect(told.every((text) => (text ?? '') !== '')).toBe(true)
    }
  })

  it('UNI-1 every listed conversion has a row', () => {
    expect([...new Set(rows.map((row) => row.conversion))].sort()).toEqual(Object.keys(CONVERSIONS).sort())
  })

  it('UNI-1 every row refuses a factor that is off by one part in five hundred', () => {
    for (const row of rows) {
      const convert = conversionNamed(row.conversion)
      expect(agrees((value) => convert(value) * 1.002, row)).toBe(false)
    }
  })
})

const converted = (amount: number, from: string, to: string): number => unit(amount, from).toNumber(to)

describe('an independent program: mathjs 15.2', () => {
  const AMOUNTS = [1, 0.375, 12.5, 86.5, 2743.2]
  const COMPARED: readonly (readonly [
    name: string,
    convert: (v: number) => number,
    from: string,
    to: string,
    relTolerance: number,
  ])[] = [
    ['inchToMm', units.inchToMm, 'inch', 'mm', 1e-15],
    ['mmToInches', units.mmToInches, 'mm', 'inch', 1e-15],
    ['feetToMm', units.feetToMm, 'foot', 'mm', 1e-15],
    ['mmToFeet', units.mmToFeet, 'mm', 'foot', 1e-15],
    ['mm2ToSquareFeet', units.mm2ToSquareFeet, 'mm^2', 'sqft', 1e-14],
    ['cubicInchesToLitres', units.cubicInchesToLitres, 'cuin', 'litre', 1e-14],
    ['cubicFeetToLitres', units.cubicFeetToLitres, 'cuft', 'litre', 1e-14],
    ['usGallonsToLitres', units.usGallonsToLitres, 'gallon', 'litre', 1e-14],
    ['litresToUsGallons', units.litresToUsGallons, 'litre', 'gallon', 1e-14],
    ['usFluidOuncesToLitres', units.usFluidOuncesToLitres, 'floz', 'litre', 1e-14],
    ['litresToUsFluidOunces', units.litresToUsFluidOunces, 'litre', 'floz', 1e-14],
    ['kgToPounds', units.kgToPounds, 'kg', 'lbm', 1e-14],
    ['poundsToKg', units.poundsToKg, 'lbm', 'kg', 1e-14],
    ['kgToOunces', units.kgToOunces, 'kg', 'oz', 1e-14],
    ['poundsPerCubicFootToKgPerM3', units.poundsPerCubicFootToKgPerM3, 'lbm/ft^3', 'kg/m^3', 1e-14],
    ['psiToPascals', units.psiToPascals, 'psi', 'Pa', 1e-10],
    ['degreesToRadians', units.degreesToRadians, 'deg', 'rad', 1e-15],
    ['celsiusToFahrenheit', units.celsiusToFahrenheit, 'degC', 'degF', 1e-13],
    ['fahrenheitToCelsius', units.fahrenheitToCelsius, 'degF', 'degC', 1e-13],
  ]
  it.each(COMPARED)('UNI-1 %s agrees', (_name, convert, from, to, relTolerance) => {
    for (const amount of AMOUNTS) {
      expect(relativeError(convert(amount), converted(amount, from, to))).toBeLessThanOrEqual(
        Math.max(relTolerance, 2 * Number.EPSILON),
      )
    }
  })

  it('UNI-2 the board foot agrees: 1 ft × 1 ft × 1 in', () => {
    const boardFootMm3 = multiply(unit(1, 'sqft'), unit(1, 'inch'))
    expect(
      relativeError(units.mm3FromBoardFeet(1), (boardFootMm3 as Unit).toNumber('mm^3')),
    ).toBeLessThanOrEqual(1e-14)
  })

  it('UNI-4 typed lengths agree with its own arithmetic on feet, inches and fractions', () => {
    for (const [feet, whole, numerator, denominator] of [
      [7, 2, 1, 2],
      [0, 35, 3, 8],
      [9, 11, 31, 32],
    ] as const) {
      const read = units.parseLength(`${feet}' ${whole} ${numerator}/${denominator}"`, { system: 'mm' })
      const expected =
        converted(feet, 'foot', 'mm') + converted(whole + numerator / denominator, 'inch', 'mm')
      expect(read.ok ? relativeError(read.value, expected) : read.problem.code).toBeLessThanOrEqual(1e-15)
    }
  })
})
