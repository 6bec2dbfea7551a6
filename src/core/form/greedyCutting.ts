import { above, beside, type CutBox, partBoxes } from './cutBox'
import { cutDiagram } from './cutDiagram'
import { burdenOf, type CuttingPlan, cuttingPlan, type CuttingTask, type SheetUse } from './cuttingPlan'

interface OpenSheet {
  readonly stock: number
  box: CutBox
}

/**
 * A plan at once, good but not proven: the largest part first, beside or above what lies on an open sheet already, on
 * the one where the box grows least; else on the cheapest sheet that is left.
 * @returns null where the counted sheets do not suffice
 * Rules: FORM-6.
 */
export function greedyCutting({ parts, stock, kerfMm }: CuttingTask): CuttingPlan | null {
  const open: OpenSheet[] = []
  const order = parts
    .map((part, place) => ({ ...part, place }))
    .toSorted((a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm)
  const room = (at: number, box: CutBox): boolean => {
    const sheet = stock[at]
    return sheet !== undefined && box.widthMm <= sheet.lengthMm && box.heightMm <= sheet.widthMm
  }
  for (const { place, lengthMm, widthMm } of order) {
    const boxes = partBoxes(place, lengthMm, widthMm)
    const grown = open
      .flatMap((sheet) =>
        boxes.flatMap((box) =>
          [beside(sheet.box, box, kerfMm), above(sheet.box, box, kerfMm)]
            .filter((candidate) => room(sheet.stock, candidate))
            .map((candidate) => ({ sheet, candidate })),
        ),
      )
      .toSorted((a, b) => growth(a) - growth(b))[0]
    if (grown !== undefined) {
      grown.sheet.box = grown.candidate
      continue
    }
    const fresh = freshSheet(boxes, stock, open, room)
    if (fresh === null) return null
    open.push(fresh)
  }
  const sheets = open.flatMap(({ stock: at, box }): readonly SheetUse[] => {
    const sheet = stock[at]
    if (sheet === undefined) return []
    return [{ ...cutDiagram(box, { widthMm: sheet.lengthMm, heightMm: sheet.widthMm }, kerfMm), stock: at }]
  })
  return cuttingPlan(sheets, stock)
}

const areaOf = ({ widthMm, heightMm }: CutBox): number => widthMm * heightMm

const growth = ({ sheet, candidate }: { sheet: OpenSheet; candidate: CutBox }): number =>
  areaOf(candidate) - areaOf(sheet.box)

function freshSheet(
  boxes: readonly CutBox[],
  stock: CuttingTask['stock'],
  open: readonly OpenSheet[],
  room: (at: number, box: CutBox) => boolean,
): OpenSheet | null {
  const left = stock
    .map((sheet, at) => ({ sheet, at }))
    .filter(
      ({ sheet: { count }, at }) => count === null || open.filter((use) => use.stock === at).length < count,
    )
    .toSorted((a, b) => burdenOf(a.sheet) - burdenOf(b.sheet))
  for (const { at } of left) {
    const box = boxes.find((candidate) => room(at, candidate))
    if (box !== undefined) return { stock: at, box }
  }
  return null
}
