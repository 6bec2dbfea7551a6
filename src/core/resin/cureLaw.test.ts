import { describe, expect, it } from 'vitest'
import { autocatalyticLaw, isothermalHours, rateConstantPerS } from './cureLaw'
import { GENERIC_CHEMISTRY, type ResinChemistry } from './resinChemistry'

const chemistry: ResinChemistry = { ...GENERIC_CHEMISTRY, referenceRatePerS: 6e-6, referenceC: 21 }
const law = autocatalyticLaw(chemistry)

describe('cureLaw', () => {
  it('RES-4 at the reference temperature the rate begins at K·κ', () => {
    expect(law(0, 294.15) / (6e-6 * 0.75)).toBeCloseTo(1, 9)
  })

  it('RES-4 the rate constant follows Arrhenius: E = 58 kJ/mol makes 21 → 31 °C 2.18 times quicker (by hand)', () => {
    // exp(58000/8.314462618 · (1/294.15 − 1/304.15)) = exp(0.77973)
    expect(rateConstantPerS(chemistry, 304.15) / 6e-6).toBeCloseTo(2.1809, 3)
  })

  it('RES-4 what has cured fully cures no further', () => {
    expect(law(1, 400)).toBe(0)
    expect(law(1.01, 400)).toBe(0)
  })

  it('RES-4 the closed form starts at nought, rises, and halves where the rate doubles', () => {
    expect(isothermalHours(chemistry, 0, 21)).toBe(0)
    expect(isothermalHours(chemistry, 0.6, 21)).toBeGreaterThan(isothermalHours(chemistry, 0.5, 21))
    const quicker = { ...chemistry, referenceRatePerS: 12e-6 }
    expect(isothermalHours(quicker, 0.5, 21) * 2).toBeCloseTo(isothermalHours(chemistry, 0.5, 21), 9)
  })

  it('RES-4 a degree of one or more, which is never reached, is our own bug', () => {
    expect(() => isothermalHours(chemistry, 1, 21)).toThrow('degree of cure')
  })
})
