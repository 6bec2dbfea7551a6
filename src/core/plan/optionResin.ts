import {
  clearanceLitres,
  gapResin,
  gapVolumeMm3,
  mixShares,
  packsForNeed,
  sealCoatKg,
  underCupLitres,
} from '../resin'
import { formSides, type SideChoices, woodEdgeMm } from '../layout'
import { type Issue, issueOf } from './issue'
import { type Found, ready } from './part'
import type { CoverageResult, FootprintResult, ResinResult } from './tableResult'
import { castLevels } from './pour/castLevels'
import type { LeaningGaps } from './pour/leaningGaps'
import type { Option } from './schema'

export interface OptionResinInput {
  readonly optionId: string
  readonly resin: Option['resin']
  readonly tableThicknessMm: number
  readonly slabThicknessMm: number
  readonly sides: SideChoices
  readonly footprint: FootprintResult
  readonly coverage: CoverageResult
  /** Null: the edges are upright. */
  readonly leaning: LeaningGaps | null
}

/**
 * How much resin the option takes, by what it fills; what was measured on the dry fit replaces the sum.
 * Rules: POUR-1 to POUR-4.
 */
export function optionResin(input: OptionResinInput): Found<ResinResult> {
  const { resin, slabThicknessMm, coverage } = input
  const { castThicknessMm, levelMm } = castLevels(resin, slabThicknessMm)
  const densityKgPerM3 = mixShares(resin.sheet).mixedDensityKgPerM3
  const fill = (depthMm: number) =>
    gapResin(gapsToDepth(input, depthMm), {
      castThicknessMm: depthMm,
      slabThicknessMm,
      woodAreaMm2: coverage.mainAreaMm2 + coverage.laidAreaMm2 + (input.leaning?.topMoreMm2 ?? 0),
      lossFraction: resin.lossFraction,
      densityKgPerM3,
    })
  const filled = fill(levelMm)
  const form = formSides(coverage.gaps, input.footprint.blank, input.sides)
  const formMm = form.reduce((sum, side) => sum + side.lengthMm, 0)
  const alongFormLitres = clearanceLitres(formMm, resin.clearanceMm, levelMm)
  const underLitres = underCupLitres(coverage.mainAreaMm2 + coverage.laidAreaMm2, 1, resin.underCupMm)
  const computedLitres = filled.gapLitres + alongFormLitres + underLitres
  const gapLitres = resin.measuredLitres ?? computedLitres
  const mixLitres = gapLitres * (1 + resin.lossFraction)
  return ready(
    {
      ...filled,
      castThicknessMm,
      levelMm,
      clearanceLitres: alongFormLitres,
      underLitres,
      floodCoatLitres: resin.floodMm === null ? 0 : filled.gapLitres - fill(castThicknessMm).gapLitres,
      computedLitres,
      isMeasured: resin.measuredLitres !== null,
      gapLitres,
      mixLitres,
      mixKg: densityKgPerM3 === null ? null : (mixLitres * densityKgPerM3) / 1000,
      sealKg: sealKg(input, levelMm, formMm),
      costCents: packsForNeed(mixLitres, { ...resin, packs: resin.sheet.packs })?.costCents ?? null,
    },
    castIssues(input, castThicknessMm),
  )
}

/** The gaps as they fill to a depth: leaning ones by their mean area. */
function gapsToDepth({ coverage, leaning }: OptionResinInput, depthMm: number): CoverageResult['gaps'] {
  if (leaning === null) return coverage.gaps
  return coverage.gaps.map((gap, index) => {
    const found = leaning.sections[index] ?? null
    if (found === null) return gap
    const sections = found.map((section) => ({ ...section, widestMm: 1, narrowestMm: 1 }))
    return { ...gap, areaMm2: gapVolumeMm3({ name: '', kind: 'edge', sections }, 0, depthMm) / depthMm }
  })
}

/** Resin for the seal coat: the wood round every gap and along the form, and both faces where they are sealed too. */
function sealKg({ resin, coverage, footprint }: OptionResinInput, levelMm: number, formMm: number): number {
  const { sealCoat } = resin
  if (sealCoat.kind === 'none') return 0
  const gapEdgesMm2 = coverage.gaps.reduce(
    (sum, { region, depthMm }) =>
      sum + woodEdgeMm(region, footprint.blank) * Math.min(levelMm, depthMm ?? levelMm),
    0,
  )
  const facesMm2 = sealCoat.covers === 'edges' ? 0 : 2 * (coverage.mainAreaMm2 + coverage.laidAreaMm2)
  return sealCoatKg(gapEdgesMm2 + formMm * levelMm + facesMm2, sealCoat.gramsPerM2)
}

function castIssues(input: OptionResinInput, castThicknessMm: number): readonly Issue[] {
  const { slabThicknessMm, tableThicknessMm } = input
  const at = ['options', input.optionId, 'resin']
  const issues: Issue[] = []
  if (castThicknessMm > slabThicknessMm) {
    issues.push(issueOf('resin-cast-thicker-than-slab', 'warning', at, { castThicknessMm, slabThicknessMm }))
  }
  if (castThicknessMm < tableThicknessMm) {
    const values = { castThicknessMm, thicknessMm: tableThicknessMm }
    issues.push(issueOf('resin-cast-below-finished', 'warning', at, values))
  }
  return issues
}
