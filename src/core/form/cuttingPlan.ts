import type { CutDiagram } from './cutDiagram'
import type { StockSheet } from './sheetStock'

export interface SheetPart {
  readonly name: string
  readonly lengthMm: number
  readonly widthMm: number
}

export interface CuttingTask {
  readonly parts: readonly SheetPart[]
  readonly stock: readonly StockSheet[]
  readonly kerfMm: number
}

export interface SheetUse extends CutDiagram {
  /** Place of the sheet in the stock that was given. */
  readonly stock: number
}

export interface CuttingPlan {
  readonly sheets: readonly SheetUse[]
  /** Of what is bought. */
  readonly costCents: number
  readonly usedAreaMm2: number
}

/** Cost first, then area: a mm² weighs so little that no sum of areas makes a cent. */
const CENTS_PER_MM2 = 1e-12

export const burdenOf = ({ costCents, lengthMm, widthMm }: StockSheet): number =>
  costCents + lengthMm * widthMm * CENTS_PER_MM2

/** Sheets with what they cost and cover. */
export const cuttingPlan = (sheets: readonly SheetUse[], stock: readonly StockSheet[]): CuttingPlan => ({
  sheets,
  costCents: sheets.reduce((sum, use) => sum + (stock[use.stock]?.costCents ?? 0), 0),
  usedAreaMm2: sheets.reduce((sum, use) => {
    const sheet = stock[use.stock]
    return sum + (sheet === undefined ? 0 : sheet.lengthMm * sheet.widthMm)
  }, 0),
})
