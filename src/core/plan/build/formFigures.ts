import {
  formParts,
  type FormPart,
  type FormPlan,
  LOAD_CONSTANT_KG,
  sheetCutting,
  voidDams,
  wetAcrossMm,
} from '../../form'
import { regionBounds, ringBounds, ringPerimeterMm } from '../../geometry'
import { formSides, type TableSide } from '../../layout'
import { buildWords } from '../text/en/buildWords'
import type { FormFigures, WeightFigures } from './buildResult'
import type { BuildTask } from './buildTask'
import { resinKgPerM3 } from './weightFigures'

/** Pairs of boxes that are looked at before a plan stays unproven: some tenths of a second. */
export const CUTTING_LIMIT = 400_000

/** The form as parts and as a sawing diagram from the shop's sheets. Rules: BLD-5. */
export function formFigures(task: BuildTask, weight: WeightFigures): FormFigures | null {
  const { coverage, footprint, option, shop } = task
  const strips = formSides(coverage.gaps, footprint.blank, option.table.sides).map(({ side }) => side)
  const plan = strips.length === 0 ? null : formPlan(task, strips)
  const made = plan ?? voidDams(voidsToDam(task))
  const parts = named(made.parts)
  if (parts.length === 0) return null
  const cuttingTask = { parts, stock: shop.sheets, kerfMm: shop.sheetKerfMm }
  const { plan: cutting, isProvenLeast, tooLarge } = sheetCutting(cuttingTask).step(CUTTING_LIMIT)
  return {
    plan,
    parts,
    stock: shop.sheets,
    cutting,
    isProvenLeast,
    tooLarge,
    caulkMm: made.caulkMm,
    buildRound: plan !== null && heaviestKg(weight) > LOAD_CONSTANT_KG,
  }
}

const heaviestKg = ({ piecesKg }: WeightFigures): number =>
  Math.max(0, ...piecesKg.map(({ massKg }) => massKg))

function named(parts: readonly FormPart[]): readonly FormPart[] {
  return parts.map((part, at) => {
    const number = parts
      .slice(0, at + 1)
      .filter(({ kind, side }) => kind === part.kind && side === part.side).length
    return {
      ...part,
      name: part.kind === 'plate' ? part.name : buildWords.part(part.kind, part.side, number),
    }
  })
}

function formPlan(task: BuildTask, stripSides: readonly TableSide[]): FormPlan {
  const { coverage, footprint, option, resin, shop } = task
  const { minX, minY, maxX, maxY } = ringBounds(footprint.blank)
  const { clearanceMm, form } = option.resin
  const clear = (side: TableSide): number => (stripSides.includes(side) ? clearanceMm : 0)
  const startMm = minX - clear('start')
  const gaps = coverage.gaps.map(({ region }) => region)
  const [largest] = shop.sheets
    .map(({ lengthMm, widthMm }) => [Math.max(lengthMm, widthMm), Math.min(lengthMm, widthMm)] as const)
    .toSorted((a, b) => b[0] * b[1] - a[0] * a[1])
  return formParts({
    innerLengthMm: maxX - startMm + clear('end'),
    innerWidthMm: maxY - minY + clear('far') + clear('near'),
    stripSides,
    castMm: resin.levelMm,
    aboveMm: option.form.aboveCastMm,
    boardMm: form.baseThicknessMm,
    beyondMm: option.form.baseBeyondMm,
    backingMm: option.form.backingMm,
    screwEveryMm: option.form.screwEveryMm,
    sheet: largest ?? [2440, 1220],
    wetAtMm: (innerAtMm) => wetAcrossMm(gaps, startMm + innerAtMm),
    resinKgPerM3: resinKgPerM3(task),
  })
}

const voidsToDam = ({ coverage }: BuildTask) =>
  coverage.gaps
    .filter(({ kind, depthMm }) => kind === 'void' && depthMm === null)
    .map(({ region }, index) => {
      const { minX, minY, maxX, maxY } = regionBounds(region)
      return {
        name: buildWords.plate(index + 1),
        lengthMm: maxX - minX,
        widthMm: maxY - minY,
        edgeMm: ringPerimeterMm(region.outer),
      }
    })
