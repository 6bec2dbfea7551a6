import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as convert from './conversions'

const SEED = 20_250_402
console.info(`conversions properties: seed ${SEED}`)

/** There and back; the factors themselves are in tests/check-values/units.json. */
const PAIRS: readonly (readonly [name: string, there: (v: number) => number, back: (v: number) => number])[] =
  [
    ['inch, mm', convert.inchToMm, convert.mmToInches],
    ['foot, mm', convert.feetToMm, convert.mmToFeet],
    ['mm³, litre', convert.mm3ToLitres, convert.litresToMm3],
    ['litre, US gallon', convert.litresToUsGallons, convert.usGallonsToLitres],
    ['litre, US fluid ounce', convert.litresToUsFluidOunces, convert.usFluidOuncesToLitres],
    ['litre, imperial gallon', convert.litresToImperialGallons, convert.imperialGallonsToLitres],
    ['kg, pound', convert.kgToPounds, convert.poundsToKg],
    ['psi, pascal', convert.psiToPascals, convert.pascalsToPsi],
    ['mm³, board foot', convert.boardFeetFromMm3, convert.mm3FromBoardFeet],
    ['degree, radian', convert.degreesToRadians, convert.radiansToDegrees],
  ]

describe('conversions', () => {
  it.each(PAIRS)('UNI-1 %s: there and back returns the value', (_name, there, back) => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (value) => {
        expect(Math.abs(back(there(value)) / value - 1)).toBeLessThan(1e-15)
      }),
      { seed: SEED, numRuns: 2_000 },
    )
  })

  it('UNI-1 inch, mm, inch does not drift over 10 000 round trips', () => {
    fc.assert(
      fc.property(fc.double({ min: -10_000, max: 10_000, noNaN: true }), (inches) => {
        let value = inches
        for (let trip = 0; trip < 10_000; trip += 1) value = convert.mmToInches(convert.inchToMm(value))
        expect(Math.abs(value - inches)).toBeLessThanOrEqual(1e-12)
      }),
      { seed: SEED, numRuns: 50 },
    )
  })

  it('UNI-1 °C and °F meet at −40, at ice and at steam', () => {
    for (const [celsius, fahrenheit] of [
      [-40, -40],
      [0, 32],
      [100, 212],
    ] as const) {
      expect(convert.celsiusToFahrenheit(celsius)).toBe(fahrenheit)
      expect(convert.fahrenheitToCelsius(fahrenheit)).toBe(celsius)
    }
  })

  it('UNI-2 refuses a volume that is not finite', () => {
    expect(() => convert.boardFeetFromMm3(NaN)).toThrow('finite')
  })
})
