import { describe, expect, it } from 'vitest'
import { type Ellipse, ellipseNormal, ellipsePoint, fitEllipse, radialDistance } from './ellipseFit'

const ellipse: Ellipse = { centre: [812.3, 1440.7], semiMajor: 31, semiMinor: 18, angleRad: 0.6 }
const rim = (count: number): (readonly [number, number])[] =>
  Array.from({ length: count }, (_, n) => ellipsePoint(ellipse, (2 * Math.PI * n) / count))

describe('fitEllipse', () => {
  it('PHO-16 gives back an exact ellipse, whichever way it lies', () => {
    for (const angleRad of [-1.2, 0, 0.6, 1.5]) {
      const turned = { ...ellipse, angleRad }
      const fit = fitEllipse(Array.from({ length: 24 }, (_, n) => ellipsePoint(turned, n)))
      expect(fit?.ellipse.centre[0]).toBeCloseTo(812.3, 6)
      expect(fit?.ellipse.centre[1]).toBeCloseTo(1440.7, 6)
      expect(fit?.ellipse.semiMajor).toBeCloseTo(31, 6)
      expect(fit?.ellipse.semiMinor).toBeCloseTo(18, 6)
      expect(Math.sin((fit?.ellipse.angleRad ?? 9) - angleRad)).toBeCloseTo(0, 6)
    }
  })

  it('PHO-16 leaves out what lies off it', () => {
    const fit = fitEllipse([
      ...rim(40),
      ...[0.3, 2, 4.4].map((turn) => ellipsePoint({ ...ellipse, semiMajor: 36, semiMinor: 23 }, turn)),
    ])
    expect(fit?.kept).toBe(40)
    expect(fit?.ellipse.centre[0]).toBeCloseTo(812.3, 3)
  })

  it('PHO-16 finds none in a line or in too few points', () => {
    expect(fitEllipse(Array.from({ length: 20 }, (_, n) => [n, 2 * n] as const))).toBeNull()
    expect(fitEllipse(rim(5))).toBeNull()
  })

  it('PHO-16 measures outwards: normals point away from the middle', () => {
    for (let turn = 0; turn < 6; turn += 0.7) {
      const at = ellipsePoint(ellipse, turn)
      const normal = ellipseNormal(ellipse, turn)
      expect(radialDistance(ellipse, at)).toBeCloseTo(0, 9)
      expect(radialDistance(ellipse, [at[0] + normal[0], at[1] + normal[1]])).toBeGreaterThan(0.5)
      expect(Math.hypot(...normal)).toBeCloseTo(1, 12)
    }
  })
})
