import { gapResin } from '../resin'
import { type Issue, issueOf } from './issue'
import { type Found, ready } from './part'
import type { CoverageResult, ResinResult } from './planResult'
import type { Option } from './schema'

export interface OptionResinInput {
  readonly optionId: string
  readonly resin: Option['resin']
  readonly tableThicknessMm: number
  readonly slabThicknessMm: number
  readonly coverage: CoverageResult
}

/** Resin for the gaps of the blank. */
export function optionResin(input: OptionResinInput): Found<ResinResult> {
  const { resin, slabThicknessMm, tableThicknessMm, coverage } = input
  const castThicknessMm = resin.castThicknessMm ?? slabThicknessMm
  const filled = gapResin(coverage.gaps, {
    castThicknessMm,
    slabThicknessMm,
    woodAreaMm2: coverage.mainAreaMm2 + coverage.laidAreaMm2,
    lossFraction: resin.lossFraction,
    densityKgPerM3: resin.densityKgPerM3,
    pricePerLitreCents: resin.pricePerLitreCents,
  })
  const at = ['options', input.optionId, 'resin']
  const issues: Issue[] = []
  if (castThicknessMm > slabThicknessMm) {
    issues.push(issueOf('resin-cast-thicker-than-slab', 'warning', at, { castThicknessMm, slabThicknessMm }))
  }
  if (castThicknessMm < tableThicknessMm) {
    const values = { castThicknessMm, thicknessMm: tableThicknessMm }
    issues.push(issueOf('resin-cast-below-finished', 'warning', at, values))
  }
  return ready({ ...filled, castThicknessMm }, issues)
}
