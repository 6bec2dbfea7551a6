import { describe, expect, it } from 'vitest'
import type { LengthDisplay } from './lengthDisplay'
import * as show from './formatQuantity'

const MM: LengthDisplay = { system: 'mm' }
const INCH: LengthDisplay = { system: 'inch', fraction: 16 }

describe('quantities as text', () => {
  it('UNI-10 writes areas in m² or ft²', () => {
    expect(show.formatArea(2_160_000, MM)).toBe('2.16 m²')
    expect(show.formatArea(216_000, MM)).toBe('0.216 m²')
    expect(show.formatArea(12_345_678, MM)).toBe('12.35 m²')
    expect(show.formatArea(1_200, MM)).toBe('0.0012 m²')
    // 1 ft² = 304.8² mm²
    expect(show.formatArea(23 * 304.8 ** 2, INCH)).toBe('23.0 ft²')
    expect(show.formatArea(2.333 * 304.8 ** 2, INCH)).toBe('2.33 ft²')
  })

  it('UNI-10 writes volumes in litres, and with inches in gallons or fluid ounces and litres', () => {
    expect(show.formatVolume(12.34, MM)).toBe('12.3 L')
    expect(show.formatVolume(0.0456, MM)).toBe('0.046 L')
    // 3.25 × 3.785411784 = 12.3026; 16.9 fl oz × 29.5735 mL = 0.4998 L
    expect(show.formatVolume(3.25 * 3.785411784, INCH)).toBe('3.25 US gal (12.3 L)')
    expect(show.formatVolume(0.5, INCH)).toBe('16.9 US fl oz (0.500 L)')
    expect(show.formatVolume(3.785411784, INCH)).toBe('1.00 US gal (3.79 L)')
    expect(show.formatVolume(0.9996 * 3.785411784, INCH)).toBe('1.00 US gal (3.78 L)')
  })

  it('UNI-10 writes masses in kg or g, lb or oz', () => {
    expect(show.formatMass(45.23, MM)).toBe('45.2 kg')
    expect(show.formatMass(0.4521, MM)).toBe('452 g')
    expect(show.formatMass(0.9996, MM)).toBe('1.00 kg')
    // 45.359237 kg = 100 lb; 7.2 oz = 0.45 lb
    expect(show.formatMass(45.359237, INCH)).toBe('100.0 lb')
    expect(show.formatMass(0.45 * 0.45359237, INCH)).toBe('7.2 oz')
    expect(show.formatMass(0.9996 * 0.45359237, INCH)).toBe('1.00 lb')
  })

  it('UNI-10 writes per cents, angles and temperatures', () => {
    expect(show.formatPercent(0.125)).toBe('12.5 %')
    expect(show.formatPercent(0.12345, { decimals: 2 })).toBe('12.35 %')
    expect(show.formatAngle(Math.PI / 8)).toBe('22.5°')
    expect(show.formatAngle(-Math.PI / 2, { decimals: 0 })).toBe('−90°')
    expect(show.formatAngle(Math.PI / 2, { decimals: 0, signed: true })).toBe('+90°')
    expect(show.formatTemperature(20, MM)).toBe('20 °C')
    expect(show.formatTemperature(20, INCH)).toBe('68 °F')
  })

  it('UNI-3 never writes -0', () => {
    expect(show.formatArea(-0, MM)).toBe('0.00 m²')
    expect(show.formatVolume(-0.00001, MM)).toBe('0.0 L')
    expect(show.formatMass(-0.0001, MM)).toBe('0 g')
    expect(show.formatMass(-0, INCH)).toBe('0.0 oz')
    expect(show.formatPercent(-0.0001)).toBe('0.0 %')
    expect(show.formatAngle(-0.0001)).toBe('0.0°')
    expect(show.formatTemperature(-0.3, MM)).toBe('0 °C')
    expect(show.formatNumber(-0.4, { signed: true })).toBe('0')
  })
})

describe('forces and times', () => {
  it('UNI-10 says what a force weighs (standard gravity 9.80665 m/s², by hand)', () => {
    expect(show.formatForce(980.665, MM)).toBe('981 N (about 100 kg)')
    expect(show.formatForce(49.03325, MM)).toBe('49 N (about 5.0 kg)')
    // 1 lbf = 4.448222 N.
    expect(show.formatForce(444.8222, INCH)).toBe('100 lbf')
  })

  it('UNI-10 gives hours whole, and short ones in minutes', () => {
    expect(show.formatHours(17.4)).toBe('17 h')
    expect(show.formatHours(1.25)).toBe('75 min')
  })
})
