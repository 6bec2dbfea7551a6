import type { Estimate, TrialResult } from './scaleTrials'

/** What a condition's trials add up to. */
export interface Figures {
  readonly trials: number
  readonly failed: number
  readonly medianErrorPercent: number
  readonly p95ErrorPercent: number
  /** Share of lengths, over all trials, whose stated 95 % interval holds the truth, percent. */
  readonly coveragePercent: number
  /** Stated standard deviation over rms error, both root mean square. */
  readonly sdOverRms: number
  readonly medianStatedPercent: number
  readonly areaMedianErrorPercent: number
  readonly areaP95ErrorPercent: number
  readonly areaCoveragePercent: number
  readonly problems: readonly string[]
}

/** Half width of a 95 % interval in standard deviations of a normal distribution. */
const NORMAL_95 = 1.96

export function figuresOf(results: readonly (TrialResult | null)[]): Figures {
  const done = results.flatMap((r) => (r ? [r] : []))
  const lengths = done.flatMap((r) => r.lengths)
  const areas = done.map((r) => r.area)
  const lengthErrors = lengths.map(errorPercent)
  const areaErrors = areas.map(errorPercent)
  return {
    trials: results.length,
    failed: results.length - done.length,
    medianErrorPercent: quantile(lengthErrors, 0.5),
    p95ErrorPercent: quantile(lengthErrors, 0.95),
    coveragePercent: coveragePercent(lengths),
    sdOverRms: rms(lengths.map((l) => l.sd)) / rms(lengths.map((l) => l.estimate - l.truth)),
    medianStatedPercent: quantile(
      lengths.map((l) => (100 * l.sd) / l.truth),
      0.5,
    ),
    areaMedianErrorPercent: quantile(areaErrors, 0.5),
    areaP95ErrorPercent: quantile(areaErrors, 0.95),
    areaCoveragePercent: coveragePercent(areas),
    problems: [...new Set(done.flatMap((r) => r.problems))].sort(),
  }
}

const errorPercent = ({ truth, estimate }: Estimate): number => (100 * Math.abs(estimate - truth)) / truth

export const holdsTruth = ({ truth, estimate, sd }: Estimate): boolean =>
  Math.abs(estimate - truth) <= NORMAL_95 * sd

const coveragePercent = (estimates: readonly Estimate[]): number =>
  (100 * estimates.filter(holdsTruth).length) / estimates.length

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length)

export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN
}
