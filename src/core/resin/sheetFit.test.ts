import { describe, expect, it } from 'vitest'
import { EXAMPLE_SHEETS } from './exampleSheets'
import { pourPeak } from './pourPeak'
import { fitSheet, sheetSetting } from './sheetFit'

const slow = EXAMPLE_SHEETS.slowCasting

describe('fitSheet', () => {
  it.each(Object.entries(EXAMPLE_SHEETS))(
    'RES-11 %s: its own deepest layer just reaches its surface limit',
    (_, sheet) => {
      const fit = fitSheet(sheet, 1080)
      expect(fit.isExact).toBe(true)
      for (const resin of [fit.nominal, fit.low, fit.high]) {
        expect(Math.abs(resin.sheetPeak.surfaceC - sheet.surfacePeakLimitC)).toBeLessThan(0.2)
        expect(resin.coreLimitC).toBe(resin.sheetPeak.coreC)
        expect(resin.coreLimitC).toBeGreaterThan(sheet.surfacePeakLimitC)
      }
    },
  )

  it('RES-11 a millimetre more than the sheet passes its limit', () => {
    const { chemistry } = fitSheet(slow, 1080).nominal
    const peak = pourPeak(chemistry, {
      layer: { depthMm: slow.deepestLayerMm + 1, widthMm: null, resinC: slow.referenceC },
      setting: sheetSetting(slow),
      startHour: 0,
    })
    expect(peak.surfaceC).toBeGreaterThan(slow.surfacePeakLimitC + 1)
  })

  it('RES-11 where the hour of the peak is given, the start share is fitted to it as well', () => {
    for (const peakHours of [11, 18]) {
      const fit = fitSheet({ ...slow, peakHours }, 1080).nominal
      expect(Math.abs(fit.sheetPeak.surfaceHours / peakHours - 1)).toBeLessThan(0.03)
      expect(Math.abs(fit.sheetPeak.surfaceC - slow.surfacePeakLimitC)).toBeLessThan(0.4)
    }
  })

  it('RES-11 a later peak needs a smaller start share', () => {
    const share = (peakHours: number): number =>
      fitSheet({ ...slow, peakHours }, 1080).nominal.chemistry.startShare
    expect(share(18)).toBeLessThan(share(11))
  })

  it('RES-11 a test in a narrow gap makes the resin count as quicker than one in a wide gap', () => {
    const rate = (testWidthMm: number | null): number =>
      fitSheet({ ...slow, testWidthMm }, 1080).nominal.chemistry.referenceRatePerS
    expect(rate(80)).toBeGreaterThan(1.2 * rate(null))
  })

  it('RES-11 a sheet that no rate explains is said to be not exact', () => {
    // 190 °C from half a millimetre: the whole heat of the reaction leaves too soon.
    const absurd = { ...slow, deepestLayerMm: 0.5, surfacePeakLimitC: 199 }
    expect(fitSheet(absurd, 1080).isExact).toBe(false)
  })
})
