import { type Region, type Ring, ringBounds, type TablePoint } from '../../geometry'
import { formSides, type FormSide, type Gap, type SideChoices, sidesReached } from '../../layout'
import type { PourGap } from '../../resin'
import type { CoverageResult } from '../tableResult'
import type { Option } from '../schema'
import { castLevels } from './castLevels'
import type { HeightArea, LeaningGaps } from './leaningGaps'
import { pourWords } from '../text/en/pourWords'

/** A hollow to be filled, still to be measured across. */
export interface GapToFill {
  readonly name: string
  readonly kind: PourGap['kind']
  /** Heights above the floor of the form. */
  readonly bottomMm: number
  readonly topMm: number
  readonly areaMm2: number
  /** Its area at heights from bottom to top where the wood beside it leans; null: the same all the way up. */
  readonly sections: readonly HeightArea[] | null
  /** What is measured for its width; null where `widthMm` is known. */
  readonly region: Region<TablePoint> | null
  readonly widthMm: number
  /** Added to what is measured: the clearance of the form that it opens on. */
  readonly widerByMm: number
}

export interface GapsInput {
  readonly coverage: CoverageResult
  readonly blank: Ring<TablePoint>
  readonly sides: SideChoices
  readonly slabThicknessMm: number
  readonly resin: Option['resin']
  readonly leaning: LeaningGaps | null
}

/**
 * Every hollow that takes resin, from the bottom of the form to the level that it is filled to.
 * @returns gaps at the edges and joints between pieces, holes, the clearance along the form, the space under a cupped
 *          slab, and what lies over the wood; none of them empty
 * Rules: POUR-1 to POUR-4.
 */
export function gapsToFill(input: GapsInput): readonly GapToFill[] {
  const { coverage, slabThicknessMm, resin } = input
  const { levelMm } = castLevels(resin, slabThicknessMm)
  const form = formSides(coverage.gaps, input.blank, input.sides)
  const woodMm2 = coverage.mainAreaMm2 + coverage.laidAreaMm2
  const gaps = (['edge', 'void'] as const).flatMap((kind) =>
    coverage.gaps
      .map((gap, index) => ({ gap, sections: input.leaning?.sections[index] ?? null }))
      .filter(({ gap }) => gap.kind === kind)
      .map(({ gap, sections }, index) => ({ ...gapOf(gap, index + 1, input, levelMm), sections })),
  )
  const upright = { region: null, widerByMm: 0, sections: null } as const
  const overWood: GapToFill = {
    ...upright,
    name: pourWords.overWood,
    kind: 'flood',
    bottomMm: slabThicknessMm,
    topMm: levelMm,
    areaMm2: woodMm2 + (input.leaning?.topMoreMm2 ?? 0),
    widthMm: shorterSideMm(input.blank),
  }
  const underWood: GapToFill = {
    ...upright,
    name: pourWords.underWood,
    kind: 'under',
    bottomMm: 0,
    topMm: resin.underCupMm,
    // A hollow cupped like a parabola is two thirds of its box (Archimedes; RES-14).
    areaMm2: (2 / 3) * woodMm2,
    widthMm: Math.max(1, resin.underCupMm),
  }
  return [...gaps, ...clearanceOf(form, resin.clearanceMm, levelMm), underWood, overWood].filter(
    ({ areaMm2, topMm, bottomMm }) => areaMm2 > 0 && topMm > bottomMm,
  )
}

function clearanceOf(form: readonly FormSide[], clearanceMm: number, levelMm: number): readonly GapToFill[] {
  const lengthMm = form.reduce((sum, side) => sum + side.lengthMm, 0)
  return [
    {
      name: pourWords.alongForm,
      kind: 'clearance',
      bottomMm: 0,
      topMm: levelMm,
      areaMm2: lengthMm * clearanceMm,
      sections: null,
      region: null,
      widthMm: Math.max(0.1, clearanceMm),
      widerByMm: 0,
    },
  ]
}

function gapOf(gap: Gap, number: number, input: GapsInput, levelMm: number): Omit<GapToFill, 'sections'> {
  const { areaMm2, depthMm, region } = gap
  const common = { areaMm2, region, widthMm: 0, topMm: levelMm }
  if (gap.kind === 'void') {
    const overWoodMm = Math.max(0, levelMm - input.slabThicknessMm)
    const filledMm = depthMm === null ? levelMm : Math.min(levelMm, depthMm + overWoodMm)
    return {
      ...common,
      name: pourWords.void(number),
      kind: 'void',
      bottomMm: levelMm - filledMm,
      widerByMm: 0,
    }
  }
  const [side] = sidesReached(region, ringBounds(input.blank))
  const name = side === undefined ? pourWords.joint(number) : pourWords.gapAtSide(side, number)
  return {
    ...common,
    name,
    kind: side === undefined ? 'joint' : 'edge',
    bottomMm: 0,
    widerByMm: side === undefined ? 0 : input.resin.clearanceMm,
  }
}

function shorterSideMm(blank: Ring<TablePoint>): number {
  const { minX, minY, maxX, maxY } = ringBounds(blank)
  return Math.min(maxX - minX, maxY - minY)
}
