import type { PhotoLine } from './benchPhoto'
import type { Figures } from './figures'

/** What must be met; the figures are the project's own aims, set before anything was measured. */
export const TARGETS = {
  medianErrorPercent: 0.1,
  p95ErrorPercent: 0.4,
  coveragePercent: { least: 90, most: 99 },
  sdOverRms: { least: 0.7, most: 1.5 },
} as const

/**
 * The targets that a run misses, in words.
 *
 * With a line: on each photo with four marks or a board. Without one the lens is a draw from its prior, one draw for all
 * trials of a photo; whether an interval that allows for the prior is true can only be judged over photos, so coverage
 * is pooled there. A photo with less must say so, and its interval must hold the truth.
 */
export function missedTargets(lines: readonly PhotoLine[]): readonly string[] {
  const full = lines.filter((l) => l.full)
  return [
    ...full.flatMap((line) => missedWithLine(line)),
    ...missedPooled(full),
    ...lines.filter((l) => !l.full).flatMap((line) => missedWithLess(line)),
    ...lines.flatMap((line) => failures(line)),
  ]
}

function missedWithLine({ photo, conditions }: PhotoLine): readonly string[] {
  const missed: string[] = []
  const flat = conditions['flat, line']
  if (!flat) return [`${photo}: no trials`]
  const { least, most } = TARGETS.sdOverRms
  if (!(flat.medianErrorPercent <= TARGETS.medianErrorPercent)) {
    missed.push(`${photo}: median error ${flat.medianErrorPercent} % of length`)
  }
  if (!(flat.p95ErrorPercent <= TARGETS.p95ErrorPercent)) {
    missed.push(`${photo}: 95th percentile ${flat.p95ErrorPercent} % of length`)
  }
  if (!(flat.sdOverRms >= least && flat.sdOverRms <= most)) {
    missed.push(`${photo}: stated deviation over rms error ${flat.sdOverRms}`)
  }
  for (const [name, figures] of Object.entries(conditions)) {
    if (!name.endsWith(', line') || name.startsWith('unread')) continue
    if (!isTrue(figures.coveragePercent))
      missed.push(`${photo}: ${name}: interval holds in ${figures.coveragePercent} %`)
  }
  return missed
}

const isTrue = (coverage: number): boolean =>
  coverage >= TARGETS.coveragePercent.least && coverage <= TARGETS.coveragePercent.most

/** Without a line, and with the face unread: over all photos. */
function missedPooled(lines: readonly PhotoLine[]): readonly string[] {
  if (lines.length === 0) return []
  const groups: readonly [string, (name: string) => boolean][] = [
    ['without a line', (name) => name.endsWith('no line') && !name.startsWith('unread')],
    ['face unread and drawn', (name) => name.startsWith('unread, drawn')],
  ]
  return groups.flatMap(([words, isMeant]) => {
    const coverages = lines.flatMap((l) =>
      Object.entries(l.conditions).flatMap(([name, f]) => (isMeant(name) ? [f.coveragePercent] : [])),
    )
    const mean = coverages.reduce((sum, c) => sum + c, 0) / coverages.length
    return isTrue(mean) ? [] : [`all photos, ${words}: interval holds in ${mean.toFixed(1)} %`]
  })
}

/** Less than four marks or a board: a wide interval may hold more often than 99 %, and what is lacking must be said. */
function missedWithLess({ photo, conditions }: PhotoLine): readonly string[] {
  return Object.entries(conditions).flatMap(([name, figures]) => {
    const missed: string[] = []
    if (!(figures.coveragePercent >= TARGETS.coveragePercent.least)) {
      missed.push(`${photo}: ${name}: interval holds in ${figures.coveragePercent} %`)
    }
    if (figures.problems.length === 0) missed.push(`${photo}: ${name}: does not say what it lacks`)
    return missed
  })
}

const failures = ({ photo, conditions }: PhotoLine): readonly string[] =>
  Object.entries(conditions).flatMap(([name, { failed, trials }]: [string, Figures]) =>
    failed > 0 ? [`${photo}: ${name}: no scale in ${failed} of ${trials} trials`] : [],
  )
