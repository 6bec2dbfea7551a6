import * as cure from './cureMeasures'
import * as heat from './heatMeasures'
import type { Inputs } from './heatMeasures'
import * as pour from './pourMeasures'
import rows from './resin.json'
import * as volume from './volumeMeasures'

/** One figure from outside of the project, and how the program finds it. */
export interface ResinCheck {
  readonly id: string
  readonly rule: string
  readonly measure: string
  readonly in: Inputs
  readonly expect: number
  /** Absolute, in the unit of the figure. */
  readonly tolerance: number
  readonly unit: string
  readonly source: {
    readonly kind: 'published' | 'by-hand' | 'independent-program' | 'common-practice'
    readonly title: string
    readonly read?: string
    /** For the rules of the trade: whether the model was fitted to it or predicts it. */
    readonly use?: 'fit' | 'predicted'
  }
}

export const MEASURES: Readonly<Record<string, (inputs: Inputs) => number>> = {
  'plane-wall': heat.planeWall,
  'plane-wall-root': heat.planeWallRoot,
  'plane-wall-factor': heat.planeWallFactor,
  'half-space': heat.halfSpace,
  'sine-mode': heat.sineMode,
  'heated-slab': heat.heatedSlab,
  contact: heat.contact,
  'lumped-cooling': heat.lumpedCooling,
  'critical-delta': heat.criticalDelta,
  'steady-theta': heat.steadyTheta,
  'adiabatic-runaway': heat.adiabaticRunaway,
  'adiabatic-end': heat.adiabaticEnd,
  'isothermal-degree': cure.isothermalDegree,
  'closed-form-time': cure.closedFormTime,
  'closed-form-back': cure.closedFormBack,
  'law-rate': cure.lawRate,
  'semenov-critical': cure.semenovCritical,
  'energy-residual': cure.energyResidual,
  'gel-degree': cure.gelDegree,
  'wood-conductivity': cure.woodConductivity,
  frustum: volume.frustum,
  sphere: volume.sphere,
  'tapered-gap': volume.taperedGap,
  'leaning-gap': volume.leaningGap,
  cup: volume.cup,
  clearance: volume.clearance,
  'uplift-n': volume.upliftN,
  uplift: volume.uplift,
  pressure: volume.pressure,
  thrust: volume.thrust,
  pour: pour.pourFigure,
  deepest: pour.deepest,
  'second-layer': pour.secondLayer,
  'gel-hours': pour.gelHours,
  'at-reading': pour.atReading,
  bucket: pour.bucket,
}

export const RESIN_CHECKS = rows as unknown as readonly ResinCheck[]

/** @throws Error when the row names no measure */
export function foundValue(check: ResinCheck): number {
  const measure = MEASURES[check.measure]
  if (measure === undefined) throw new Error(`no measure ${check.measure}`)
  return measure(check.in)
}

export const agrees = (check: Pick<ResinCheck, 'expect' | 'tolerance'>, found: number): boolean =>
  Math.abs(found - check.expect) <= check.tolerance
