import { describe, expect, it } from 'vitest'
import { EXAMPLE_SHEETS } from './exampleSheets'
import { refitFromLog, type LoggedPour } from './logRefit'
import { pourPeak } from './pourPeak'
import type { ResinChemistry } from './resinChemistry'
import { fitSheet } from './sheetFit'
import { depthLimit } from './depthLimit'

const sheet = EXAMPLE_SHEETS.slowCasting
const fit = fitSheet(sheet, 1080)
const place = { beneath: 'board-on-bench', woodWPerMK: 0.15 } as const
const refit = (pours: readonly LoggedPour[]) => refitFromLog(fit, pours, place, sheet.surfacePeakLimitC)

/** A pour that a resin of the given chemistry would have left in the log, readings to the half degree. */
function logged(
  name: string,
  chemistry: ResinChemistry,
  depthMm: number,
  roomC: number,
  hasHours = true,
): LoggedPour {
  const peak = pourPeak(chemistry, {
    layer: { depthMm, widthMm: 150, resinC: roomC },
    setting: { ...place, air: 'still', room: { kind: 'steady', roomC } },
    startHour: 0,
  })
  return {
    name,
    depthMm,
    widthMm: 150,
    roomC,
    resinC: roomC,
    air: 'still',
    surfacePeakC: Math.round(peak.surfaceC * 2) / 2,
    peakHours: hasHours ? Math.round(peak.surfaceHours * 2) / 2 : null,
  }
}

const quicker: ResinChemistry = {
  ...fit.nominal.chemistry,
  referenceRatePerS: fit.nominal.chemistry.referenceRatePerS * 1.15,
}
const pours = [
  logged('first', quicker, 40, 20),
  logged('second', quicker, 45, 22),
  logged('third', quicker, 30, 26),
]
const codes = (some: readonly LoggedPour[]): readonly string[] => refit(some).notices.map(({ code }) => code)

describe('refitFromLog', () => {
  it('RES-22 pours of a resin that is 15 % quicker give its rate back', () => {
    const found = refit(pours.map((pour) => ({ ...pour, peakHours: null })))
    const rate = found.fit?.nominal.chemistry.referenceRatePerS ?? NaN
    expect(Math.abs(rate / quicker.referenceRatePerS - 1)).toBeLessThan(0.02)
  })

  it('RES-22 with three hours of peak the start share is fitted too, and both come near', () => {
    const later: ResinChemistry = { ...quicker, startShare: 0.5 }
    const log = [logged('a', later, 45, 20), logged('b', later, 40, 23), logged('c', later, 45, 25)]
    const found = refit(log)
    expect(found.fit?.nominal.chemistry.startShare).toBeLessThan(0.68)
    for (const { loggedC, afterC, loggedHours, afterHours } of found.pours) {
      expect(Math.abs((afterC ?? NaN) - loggedC)).toBeLessThan(2)
      expect(Math.abs((afterHours ?? NaN) / (loggedHours ?? NaN) - 1)).toBeLessThan(0.08)
    }
  })

  it('RES-22 every pour is set against what was computed before and after', () => {
    const found = refit(pours)
    expect(found.pours.map(({ name }) => name)).toEqual(['first', 'second', 'third'])
    for (const { loggedC, beforeC, afterC } of found.pours)
      expect(Math.abs((afterC ?? NaN) - loggedC)).toBeLessThan(Math.abs(beforeC - loggedC))
  })

  it('RES-22 the core limit stays the sheet’s, so a quicker resin is planned thinner', () => {
    const found = refit(pours).fit ?? fit
    expect(found.nominal.coreLimitC).toBe(fit.nominal.coreLimitC)
    const conditions = {
      setting: { ...place, air: 'still', room: { kind: 'steady', roomC: 21 } },
      startHour: 0,
      resinC: 21,
      widthMm: null,
    } as const
    expect(depthLimit(found, conditions, 50, false).planMm).toBeLessThan(
      depthLimit(fit, conditions, 50, false).planMm,
    )
  })

  it('RES-22 a slower resin is never planned deeper than its sheet without the override', () => {
    const slower = { ...quicker, referenceRatePerS: fit.nominal.chemistry.referenceRatePerS * 0.8 }
    const log = [logged('a', slower, 45, 20), logged('b', slower, 40, 23), logged('c', slower, 45, 25)]
    const found = refit(log).fit ?? fit
    const conditions = {
      setting: { ...place, air: 'still', room: { kind: 'steady', roomC: 21 } },
      startHour: 0,
      resinC: 21,
      widthMm: null,
    } as const
    const limit = depthLimit(found, conditions, 50, false)
    expect(limit.modelMm).toBeGreaterThan(52)
    expect(limit).toMatchObject({ planMm: 45, cappedBy: 'sheet' })
  })

  it('RES-22 two pours are too few, and the sheet’s fit stays', () => {
    const found = refit(pours.slice(0, 2))
    expect(found.fit).toBeNull()
    expect(found.notices).toMatchObject([
      { code: 'log-too-short', severity: 'blocker', values: { pours: 2, leastPours: 3 } },
    ])
    expect(found.pours.map(({ afterC }) => afterC)).toEqual([null, null])
  })

  it('RES-22 a log against itself is refused, and both pours are named', () => {
    const [first, second, third] = pours
    if (first === undefined || second === undefined || third === undefined) throw new Error('pours')
    const wrong = { ...second, name: 'cool yet deeper', surfacePeakC: second.roomC + 3 }
    const found = refit([first, wrong, third])
    expect(found.fit).toBeNull()
    expect(found.notices).toMatchObject([
      { code: 'log-contradicts-itself', values: { firstName: 'cool yet deeper', secondName: 'first' } },
    ])
  })

  it('RES-22 a figure that cannot be leaves its pour out, by name', () => {
    const [first] = pours
    if (first === undefined) throw new Error('pours')
    for (const bad of [
      { depthMm: -3 },
      { surfacePeakC: first.roomC - 1 },
      { peakHours: 0 },
      { widthMm: 0 },
      { roomC: NaN },
    ])
      expect(codes([...pours, { ...first, ...bad, name: 'bad' }])).toContain('log-entry-unusable')
  })

  it('RES-22 a pour above the sheet’s limit is pointed out, a log that scatters too', () => {
    const hot = logged('hot', quicker, 75, 26)
    expect(codes([...pours, hot])).toContain('log-hotter-than-sheet')
    const [first, second, third] = pours
    if (first === undefined || second === undefined || third === undefined) throw new Error('pours')
    const scattered = [
      { ...first, surfacePeakC: first.roomC + 2.5, depthMm: 30 },
      { ...second, surfacePeakC: second.roomC + 26 },
      { ...third, surfacePeakC: third.roomC + 18, depthMm: 31 },
    ]
    expect(codes(scattered)).toContain('log-scattered')
  })
})
