import {
  type Block,
  flowBlocks,
  listItem,
  paragraph,
  stackBlocks,
  STROKES,
  type TableColumn,
  tableRow,
} from '../../drawing'
import { formatArea, formatForce } from '../../units'
import type { FormFigures } from '../build/buildResult'
import { formTexts } from '../text/en/ui/form'
import { boardBlock, type BoardToDraw } from './sheetBoard'
import { contentBox, type SheetPage } from './sheetFrame'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'
import { aboutText } from './slabPage'

/** A sheet's picture takes at most this of a page, so that its list of cuts finds room beside others. */
const MOST_OF_PAGE = 0.6

const unparted = (words: string): string => words.replaceAll(' ', '\u00a0')

function figureRows(form: FormFigures, input: SheetInput): readonly (readonly [string, string])[] {
  const { plan } = form
  const { length, display } = input
  const caulk = [formTexts['form-caulk'], length(form.caulkMm)] as const
  if (plan === null) return [caulk]
  const joints = plan.base.jointsMm.map((mm, at) =>
    formTexts['form-joints-wet']({ at: length(mm), wet: length(plan.base.wetMm[at] ?? 0) }),
  )
  return [
    [formTexts['form-base'], `${length(plan.baseLengthMm)} × ${length(plan.baseWidthMm)}`],
    [formTexts['form-side-height'], length(plan.sideHeightMm)],
    ...(joints.length === 0 ? [] : [[formTexts['form-joints'], joints.join(', ')] as const]),
    caulk,
    ...(plan.jointTapeMm > 0 ? [[formTexts['form-tape'], length(plan.jointTapeMm)] as const] : []),
    [formTexts['form-release'], unparted(formatArea(plan.releaseAreaMm2, display))],
    [formTexts['form-screws'], String(plan.screws)],
    [formTexts['form-drip'], unparted(formatArea(plan.dripSheetAreaMm2, display))],
    [formTexts['form-push'], unparted(formatForce(plan.load.thrustNPerM, display))],
    [formTexts['form-pull'], unparted(formatForce(plan.load.pullPerScrewN, display))],
  ]
}

const rowsOf = (rows: readonly (readonly [string, string])[], widthMm: number): readonly Block[] => {
  const columns: readonly TableColumn[] = [
    { widthMm: widthMm * 0.55 },
    { widthMm: widthMm * 0.45, anchor: 'end' },
  ]
  return rows.map((cells) =>
    tableRow(columns, cells, { sizeMm: SIZE.body, spaceBeforeMm: 0, padMm: 1.3, ruleBelow: STROKES.thin }),
  )
}

const heading = (words: string, widthMm: number): Block =>
  paragraph(words, { sizeMm: SIZE.heading, weight: 'bold', widthMm, spaceBeforeMm: 5, keepWithNext: true })

function cutBlocks({ use }: BoardToDraw, input: SheetInput, widthMm: number): readonly Block[] {
  const { text, length } = input
  const lines = use.cuts.map(({ direction, atMm, fromMm, toMm }, at) => {
    const values = { number: at + 1, at: length(atMm), from: length(fromMm), to: length(toMm) }
    return direction === 'upright' ? text.sheetFormCutUpright(values) : text.sheetFormCutLevel(values)
  })
  return [
    paragraph(text.sheetFormCutOrder, {
      sizeMm: SIZE.body,
      weight: 'bold',
      widthMm,
      spaceBeforeMm: 3,
      keepWithNext: true,
    }),
    ...lines.map((line) => paragraph(line, { sizeMm: SIZE.body, widthMm })),
  ]
}

function boardBlocks(form: FormFigures, input: SheetInput): readonly Block[] {
  const box = contentBox(input.paper, input.orientation)
  const { cutting } = form
  const { text, length } = input
  const body = { sizeMm: SIZE.body, widthMm: box.widthMm, spaceBeforeMm: 2.5 }
  if (cutting === null) return [paragraph(text.sheetFormFits, { ...body, weight: 'bold' })]
  const boards = cutting.sheets.flatMap((use, at) => {
    const sheet = form.stock[use.stock]
    if (sheet === undefined) return []
    const board = { use, sheet, parts: form.parts }
    const size = `${length(sheet.lengthMm)} × ${length(sheet.widthMm)}`
    return [
      heading(formTexts['sheet-of']({ number: at + 1, name: sheet.name, size }), box.widthMm),
      boardBlock(board, input, box.widthMm, box.heightMm * MOST_OF_PAGE),
      ...cutBlocks(board, input, box.widthMm),
    ]
  })
  return [
    paragraph(formTexts[form.isProvenLeast ? 'sheet-proven' : 'sheet-not-proven'], body),
    ...boards,
    paragraph(text.sheetFormKerf({ kerf: length(input.plan.shop.sheetKerfMm) }), body),
  ]
}

function cautionBlocks(form: FormFigures, { text }: SheetInput, widthMm: number): readonly Block[] {
  const lines = [
    ...(form.plan === null ? [formTexts['form-dams']] : [formTexts['form-pull-note']]),
    ...(form.buildRound ? [formTexts['form-round']] : []),
    text.sheetFormDust,
  ]
  return lines.map((line) =>
    listItem('–', line, { sizeMm: SIZE.body, widthMm, indentMm: 4, spaceBeforeMm: 2 }),
  )
}

/** The form: its figures, its parts, and the sheets that they are sawn from. Rules: SHT-17. */
export function formPages(input: SheetInput): readonly SheetPage[] {
  const { build, text, length } = input
  if (build === null) return []
  const { form } = build
  const box = contentBox(input.paper, input.orientation)
  const { widthMm } = box
  const parts = (form?.parts ?? []).map(
    ({ name, lengthMm, widthMm: acrossMm }, at) =>
      [text.sheetFormPart({ number: at + 1, name }), `${length(lengthMm)} × ${length(acrossMm)}`] as const,
  )
  const blocks: readonly Block[] =
    form === null
      ? [paragraph(text.sheetFormNone, { sizeMm: SIZE.body, widthMm })]
      : [
          ...rowsOf(figureRows(form, input), widthMm),
          ...cautionBlocks(form, input, widthMm),
          ...(parts.length === 0
            ? []
            : [
                heading(formTexts['parts-part'], widthMm),
                ...rowsOf(parts, widthMm),
                ...boardBlocks(form, input),
              ]),
        ]
  return flowBlocks(blocks, box.heightMm, box.heightMm).map((page, k) => ({
    title: k === 0 ? text.sheetTitleForm : text.sheetContinued({ title: text.sheetTitleForm }),
    about: aboutText(input),
    items: stackBlocks(page, box),
  }))
}
