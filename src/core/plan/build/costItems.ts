import { type CostItem, finishLitres, slabCents, type WoodMoney, woodMoney } from '../../quote'
import { packsForNeed } from '../../resin'
import { ringPerimeterMm } from '../../geometry'
import { boardMeasure, type BoardMeasure } from '../../wood'
import { buildWords } from '../text/en/buildWords'
import type { FormFigures, ShoppingItem, WeightFigures } from './buildResult'
import type { BuildTask } from './buildTask'

interface Parts {
  readonly task: BuildTask
  readonly weight: WeightFigures
  readonly form: FormFigures | null
}

/** The slab as the yard measures it. Rules: BLD-8. */
export function yardMeasure({ slab, shape, option }: BuildTask): BoardMeasure {
  const size = {
    lengthMm: shape.lengthMm,
    meanWidthMm: shape.grossAreaMm2 / shape.lengthMm,
    widestMm: shape.widthMm,
    thicknessMm: slab.thicknessMm ?? option.table.thicknessMm,
  }
  return boardMeasure(size, slab.wood.yardRule, slab.wood.tally)
}

/** Price of the slab by its unit; null: not priced, or sold by a weight that is not known. */
function slabPriceCents({ task, weight }: Parts, measure: BoardMeasure): number | null {
  const { priceCents, wood } = task.slab
  if (priceCents === null) return null
  return slabCents(wood.soldBy, priceCents, { ...measure, massKg: weight.slabKg })
}

/** The slab's money by where its wood ends: in the finished top, by volume, or nowhere. Rules: BLD-8. */
export function woodMoneyOf(parts: Parts, measure: BoardMeasure): WoodMoney | null {
  const cents = slabPriceCents(parts, measure)
  if (cents === null) return null
  const { coverage, option, shape, slab } = parts.task
  const topMm3 = (coverage.mainInFinishedMm2 + coverage.laidAreaMm2) * option.table.thicknessMm
  const slabMm3 = shape.woodAreaMm2 * (slab.thicknessMm ?? option.table.thicknessMm)
  return woodMoney(cents, topMm3 / slabMm3)
}

const MM_PER_M = 1000
const MM2_PER_M2 = 1e6
const one = (group: CostItem['group'], name: string, unitCents: number): CostItem => ({
  group,
  name,
  quantity: 1,
  unit: '',
  unitCents,
})

/** All that the job costs, as lines; lines of nothing are left out. Rules: BLD-8. */
export function costItems(parts: Parts, measure: BoardMeasure): readonly CostItem[] {
  const { task } = parts
  const { option, shop } = task
  const priceCents = slabPriceCents(parts, measure)
  const wood = priceCents === null ? [] : [one('wood', buildWords.slab(task.slab.species ?? ''), priceCents)]
  const hours = shop.steps.map(({ id, hours: quantity }) => ({
    group: 'hours' as const,
    name: buildWords.step(id),
    quantity,
    unit: 'h',
    unitCents: shop.hourCents,
  }))
  return [
    ...wood,
    ...resinItems(task),
    ...sheetItems(parts.form),
    ...consumables(parts),
    bladeItem(task),
    finishItem(task),
    {
      group: 'keys' as const,
      name: buildWords.keys,
      quantity: option.quote.keys,
      unit: '',
      unitCents: shop.prices.keyCents,
    },
    ...hours,
    one('base', buildWords.base, option.quote.baseCents),
    one('delivery', buildWords.delivery, option.quote.deliveryCents),
    ...option.quote.own,
  ].filter(({ quantity, unitCents, group }) => quantity > 0 && (unitCents > 0 || group === 'hours'))
}

function packsOf({ resin, option }: BuildTask) {
  const { sheet, packMarginFraction, haveLitres } = option.resin
  return packsForNeed(resin.mixLitres, { packs: sheet.packs, packMarginFraction, haveLitres })?.packs ?? []
}

const resinItems = (task: BuildTask): readonly CostItem[] =>
  packsOf(task).map(({ pack, count }) => ({
    group: 'resin',
    name: `${buildWords.resin(task.option.resin.sheet.name)}, ${pack.name}`,
    quantity: count,
    unit: '',
    unitCents: pack.priceCents,
  }))

function sheetCounts(form: FormFigures | null): readonly { readonly at: number; readonly count: number }[] {
  const uses = form?.cutting?.sheets ?? []
  return (form?.stock ?? [])
    .map((_, at) => ({ at, count: uses.filter(({ stock }) => stock === at).length }))
    .filter(({ count }) => count > 0)
}

const sheetName = (form: FormFigures, at: number): string => {
  const sheet = form.stock[at]
  const size = `${Math.round(sheet?.lengthMm ?? 0)} × ${Math.round(sheet?.widthMm ?? 0)} mm`
  return buildWords.sheet(sheet?.name ?? '', size)
}

const sheetItems = (form: FormFigures | null): readonly CostItem[] =>
  form === null
    ? []
    : sheetCounts(form).map(({ at, count }) => ({
        group: 'sheets',
        name: sheetName(form, at),
        quantity: count,
        unit: '',
        unitCents: form.stock[at]?.costCents ?? 0,
      }))

function consumables({ task, form }: Parts): readonly CostItem[] {
  if (form === null) return []
  const { prices } = task.shop
  const item = (name: string, quantity: number, unit: string, unitCents: number): CostItem => ({
    group: 'consumables',
    name,
    quantity,
    unit,
    unitCents,
  })
  const { plan } = form
  return [
    item(buildWords.caulk, form.caulkMm / MM_PER_M, 'm', prices.caulkCentsPerM),
    item(buildWords.jointTape, (plan?.jointTapeMm ?? 0) / MM_PER_M, 'm', prices.tapeCentsPerM),
    item(buildWords.release, (plan?.releaseAreaMm2 ?? 0) / MM2_PER_M2, 'm²', prices.releaseCentsPerM2),
    item(buildWords.dripSheet, (plan?.dripSheetAreaMm2 ?? 0) / MM2_PER_M2, 'm²', prices.dripSheetCentsPerM2),
    item(buildWords.screws, plan?.screws ?? 0, '', prices.screwCents),
  ]
}

/** By the length of the cuts in the slab. */
function bladeItem({ pieces, footprint, shop }: BuildTask): CostItem {
  const sides = pieces.cuts.map(({ side }) =>
    side === 'start' || side === 'end' ? footprint.finishedWidthMm : footprint.finishedLengthMm,
  )
  const sawnMm = sides.reduce((sum, lengthMm) => sum + lengthMm, 0)
  return {
    group: 'blades',
    name: buildWords.blades,
    quantity: sawnMm / MM_PER_M,
    unit: 'm',
    unitCents: shop.prices.bladeCentsPerM,
  }
}

function finishItem({ footprint, coverage, option, shop }: BuildTask): CostItem {
  const { finish } = shop
  const facesMm2 = 2 * coverage.finishedAreaMm2
  const edgesMm2 = ringPerimeterMm(footprint.finished) * option.table.thicknessMm
  return {
    group: 'finish',
    name: buildWords.finish(finish.name),
    quantity: finishLitres(facesMm2 + edgesMm2, finish.coats, finish.coverM2PerLitre),
    unit: 'L',
    unitCents: finish.centsPerLitre,
  }
}

/** What is to be bought, priced or not; the slab itself is there. Rules: BLD-9. */
export function shoppingList(parts: Parts): readonly ShoppingItem[] {
  const { task, form } = parts
  const { option } = task
  const sheets = sheetItems(form).filter((_, index) => {
    const at = sheetCounts(form)[index]?.at
    return at !== undefined && form?.stock[at]?.count === null
  })
  return [
    ...resinItems(task),
    ...sheets,
    ...consumables(parts),
    finishItem(task),
    ...option.quote.own.filter(({ group }) => group === 'consumables' || group === 'finish'),
  ]
    .filter(({ quantity }) => quantity > 0)
    .map(({ group, name, quantity, unit }) => ({ group, name, quantity, unit }))
}
