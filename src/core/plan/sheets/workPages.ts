import {
  type Block,
  flowBlocks,
  paragraph,
  stackBlocks,
  STROKES,
  type TableColumn,
  tableRow,
} from '../../drawing'
import { formatHours, formatNumber } from '../../units'
import { dayText } from '../dayText'
import { civilDay } from '../hourText'
import { roundedUp } from '../roundedUp'
import { buildWords } from '../text/en/buildWords'
import { priceTexts } from '../text/en/ui/price'
import { contentBox, type SheetPage } from './sheetFrame'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'
import { aboutText } from './slabPage'

const TICK_MM = 3.6
const COLUMN_MM = 186

/** A row with a box to be ticked before it. */
function ticked(row: Block): Block {
  return {
    ...row,
    draw: ([x, y]) => {
      const top = y + (row.heightMm - TICK_MM) / 2
      const ring = [
        [x, top],
        [x + TICK_MM, top],
        [x + TICK_MM, top + TICK_MM],
        [x, top + TICK_MM],
      ] as const
      return [{ kind: 'polygon', rings: [ring], stroke: STROKES.finished, fill: null }, ...row.draw([x, y])]
    },
  }
}

function listPagesOf(input: SheetInput, blocks: readonly Block[], title: string): readonly SheetPage[] {
  const box = contentBox(input.paper, input.orientation)
  return flowBlocks(blocks, box.heightMm, box.heightMm).map((page, k) => ({
    title: k === 0 ? title : input.text.sheetContinued({ title }),
    about: aboutText(input),
    items: stackBlocks(page, box),
  }))
}

const ROW = { sizeMm: SIZE.body, spaceBeforeMm: 0, padMm: 1.4, ruleBelow: STROKES.thin } as const

/** The steps with their days and hours, to be ticked off. Rules: SHT-16. */
export function workPages(input: SheetInput): readonly SheetPage[] {
  const { build, text, option } = input
  if (build === null) return []
  const widthMm = Math.min(contentBox(input.paper, input.orientation).widthMm, COLUMN_MM)
  const firstDay = civilDay(option.resin.start.day)
  const when = (days: number) => dayText(days, firstDay).replaceAll(' ', '\u00a0')
  const columns: readonly TableColumn[] = [
    { widthMm: widthMm * 0.05 },
    { widthMm: widthMm * 0.07 },
    { widthMm: widthMm * 0.47 },
    { widthMm: widthMm * 0.12 },
    { widthMm: widthMm * 0.29 },
  ]
  const rows = build.work.steps.map((step) => {
    const needs = step.needsLater.map(buildWords.step).join(', ')
    const notes = [
      ...(step.waitDays > 0 ? [text.sheetWorkWait({ days: step.waitDays })] : []),
      ...(needs === '' ? [] : [priceTexts['work-needs']({ needs })]),
    ]
    const name = [buildWords.step(step.id), ...notes].join('; ')
    const [from, to] = [when(step.firstDay), when(step.lastDay)]
    const days = from === to ? from : priceTexts['work-span']({ from, to })
    const hours = step.hours > 0 ? formatHours(step.hours).replaceAll(' ', '\u00a0') : ''
    return ticked(tableRow(columns, ['', String(step.number), name, hours, days], ROW))
  })
  const all = priceTexts['work-all']({ hours: formatHours(build.work.hours), days: build.work.shopDays })
  const blocks = [
    paragraph(all, { sizeMm: SIZE.heading, weight: 'bold', widthMm }),
    ...(firstDay === null
      ? [paragraph(priceTexts['work-no-day'], { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 2 })]
      : []),
    paragraph(text.sheetWorkProducts, { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 2 }),
    ...rows,
  ]
  return listPagesOf(input, blocks, text.sheetTitleWork)
}

/** What is to be bought, rounded up, to be ticked off. Rules: SHT-16. */
export function shoppingPages(input: SheetInput): readonly SheetPage[] {
  const { build, text } = input
  if (build === null) return []
  const widthMm = Math.min(contentBox(input.paper, input.orientation).widthMm, COLUMN_MM)
  const columns: readonly TableColumn[] = [
    { widthMm: widthMm * 0.05 },
    { widthMm: widthMm * 0.2 },
    { widthMm: widthMm * 0.57 },
    { widthMm: widthMm * 0.18, anchor: 'end' },
  ]
  const rows = build.shopping.map(({ group, name, quantity, unit }) => {
    const bought = roundedUp(quantity, unit)
    const number = formatNumber(bought, { decimals: Number.isInteger(bought) ? 0 : 2 })
    const amount = unit === '' ? number : `${number}\u00a0${unit}`
    return ticked(tableRow(columns, ['', buildWords.group(group), name, amount], ROW))
  })
  const blocks = [
    paragraph(rows.length === 0 ? priceTexts['shop-none'] : priceTexts['shop-note'], {
      sizeMm: SIZE.body,
      widthMm,
    }),
    ...rows,
  ]
  return listPagesOf(input, blocks, text.sheetTitleShopping)
}
