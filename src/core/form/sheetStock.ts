/** A sheet, or an offcut of one, that form parts can be sawn from. */
export interface StockSheet {
  readonly name: string
  readonly lengthMm: number
  readonly widthMm: number
  /** How many there are; null: as many as one buys. */
  readonly count: number | null
  /** Of one; 0 for what is in the shop already. */
  readonly costCents: number
}

export interface SheetSize {
  readonly id: string
  readonly lengthMm: number
  readonly widthMm: number
  readonly system: 'metric' | 'imperial'
}

/** Sheet sizes that the trade sells faced board in (common practice; read on sellers' and makers' pages). */
export const SHEET_SIZES: readonly SheetSize[] = [
  { id: '2440x1220', lengthMm: 2440, widthMm: 1220, system: 'metric' },
  { id: '2500x1250', lengthMm: 2500, widthMm: 1250, system: 'metric' },
  { id: '2800x2070', lengthMm: 2800, widthMm: 2070, system: 'metric' },
  { id: '3050x1220', lengthMm: 3050, widthMm: 1220, system: 'metric' },
  { id: '3050x1525', lengthMm: 3050, widthMm: 1525, system: 'metric' },
  { id: '4x8ft', lengthMm: 2438.4, widthMm: 1219.2, system: 'imperial' },
  { id: '4x10ft', lengthMm: 3048, widthMm: 1219.2, system: 'imperial' },
  { id: '5x8ft', lengthMm: 2438.4, widthMm: 1524, system: 'imperial' },
  { id: '5x10ft', lengthMm: 3048, widthMm: 1524, system: 'imperial' },
]
