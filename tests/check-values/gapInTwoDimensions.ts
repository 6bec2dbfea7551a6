/**
 * A gap of resin between two pieces of wood, in a section across it: a program of its own, explicit in time, that shares
 * no line with the pour model. It shows how far the model's side loss, one number for a whole side, can be trusted.
 * Half of the gap is computed; wood beside it, board and bench beneath, air above and below.
 */
export interface GapSectionCase {
  readonly gapMm: number
  readonly depthMm: number
  readonly roomC: number
  readonly woodWPerMK: number
  readonly resin: {
    readonly ratePerS: number
    readonly referenceC: number
    readonly activationJPerMol: number
    readonly startShare: number
    readonly fullRiseK: number
  }
}

/** Conductivity, W/mK, and heat held, J/m³K. */
const RESIN = { conduct: 0.2, hold: 1100 * 1900 }
const BOARD = { conduct: 0.13, hold: 700 * 1400 }
const BENCH = { conduct: 0.14, hold: 600 * 1700 }
const WOOD_HOLD = 620 * 1600
const BOARD_MM = 18
const BENCH_MM = 40
const WOOD_MM = 150
const TOP_H = 9
const BOTTOM_H = 6
const CELL_MM = 3.125
const LONGEST_S = 40 * 3600
const GAS = 8.314
const ZERO_C = 273.15
/** Steps of half of what is stable for the quickest material. */
const STEP_SHARE = 0.5
const QUICKEST_M2_PER_S = 1.65e-7

interface Field {
  readonly rows: number
  readonly columns: number
  readonly firstResinRow: number
  readonly resinColumns: number
  readonly heightM: number
  readonly widthM: (column: number) => number
  readonly conduct: Float64Array
  readonly hold: Float64Array
  readonly kelvin: Float64Array
  readonly degree: Float64Array
  readonly flow: Float64Array
}

function fieldOf(wish: GapSectionCase): Field {
  const resinColumns = Math.max(3, Math.round(wish.gapMm / 2 / CELL_MM))
  const heightM = CELL_MM / 1000
  const resinM = wish.gapMm / 2000 / resinColumns
  const bench = Math.round(BENCH_MM / CELL_MM)
  const firstResinRow = bench + Math.round(BOARD_MM / CELL_MM)
  const columns = resinColumns + Math.round(WOOD_MM / CELL_MM)
  const rows = firstResinRow + Math.round(wish.depthMm / CELL_MM)
  const materials = Array.from({ length: rows * columns }, (_, here) => {
    const row = Math.floor(here / columns)
    if (row < bench) return BENCH
    if (row < firstResinRow) return BOARD
    return here % columns < resinColumns ? RESIN : { conduct: wish.woodWPerMK, hold: WOOD_HOLD }
  })
  return {
    rows,
    columns,
    firstResinRow,
    resinColumns,
    heightM,
    widthM: (column) => (column < resinColumns ? resinM : heightM),
    conduct: Float64Array.from(materials, ({ conduct }) => conduct),
    hold: Float64Array.from(materials, ({ hold }) => hold),
    kelvin: new Float64Array(rows * columns).fill(wish.roomC + ZERO_C),
    degree: new Float64Array(rows * columns),
    flow: new Float64Array(rows * columns),
  }
}

const at = (values: Float64Array, index: number): number => values[index] ?? NaN

/** Moves heat from one cell to another, W per metre of gap. */
function pass(field: Field, from: number, to: number, halfFrom: number, halfTo: number, faceM: number): void {
  const { kelvin, conduct, flow } = field
  const resistance = halfFrom / at(conduct, from) + halfTo / at(conduct, to)
  const watts = ((at(kelvin, from) - at(kelvin, to)) / resistance) * faceM
  flow[from] = at(flow, from) - watts
  flow[to] = at(flow, to) + watts
}

function lose(field: Field, here: number, transfer: number, roomK: number, faceM: number): void {
  const resistance = field.heightM / 2 / at(field.conduct, here) + 1 / transfer
  field.flow[here] = at(field.flow, here) - ((at(field.kelvin, here) - roomK) / resistance) * faceM
}

function sumFlows(field: Field, roomK: number): void {
  const { rows, columns, heightM, widthM } = field
  field.flow.fill(0)
  for (let column = 0; column < columns; column += 1) {
    const own = widthM(column)
    for (let row = 0; row < rows; row += 1) {
      const here = row * columns + column
      if (column + 1 < columns) pass(field, here, here + 1, own / 2, widthM(column + 1) / 2, heightM)
      if (row + 1 < rows) pass(field, here, here + columns, heightM / 2, heightM / 2, own)
    }
    lose(field, column, BOTTOM_H, roomK, own)
    lose(field, (rows - 1) * columns + column, TOP_H, roomK, own)
  }
}

/** Warms every cell and cures the resin. @returns the hottest of the resin, kelvin */
function move(field: Field, resin: GapSectionCase['resin'], stepS: number): number {
  const { columns, firstResinRow, resinColumns, heightM, widthM, kelvin, degree, flow, hold } = field
  const energyK = resin.activationJPerMol / GAS
  const referenceK = resin.referenceC + ZERO_C
  let hottest = 0
  for (let here = 0; here < kelvin.length; here += 1) {
    const column = here % columns
    const mass = widthM(column) * heightM * at(hold, here)
    kelvin[here] = at(kelvin, here) + (at(flow, here) * stepS) / mass
    if (here < firstResinRow * columns || column >= resinColumns) continue
    const cured = at(degree, here)
    const constant = resin.ratePerS * Math.exp(-energyK * (1 / at(kelvin, here) - 1 / referenceK))
    const more = constant * (resin.startShare + cured) * (1 - cured) ** 2 * stepS
    degree[here] = Math.min(1, cured + more)
    kelvin[here] = at(kelvin, here) + more * resin.fullRiseK
    hottest = Math.max(hottest, at(kelvin, here))
  }
  return hottest
}

/** Hottest place of the gap over time, °C. */
export function hottestOfGap(wish: GapSectionCase): number {
  const field = fieldOf(wish)
  const roomK = wish.roomC + ZERO_C
  const finest = Math.min(field.heightM, field.widthM(0))
  const stepS = (STEP_SHARE * finest ** 2) / (4 * QUICKEST_M2_PER_S)
  let hottest = roomK
  for (let time = 0; time < LONGEST_S; time += stepS) {
    sumFlows(field, roomK)
    const now = move(field, wish.resin, stepS)
    if (now < hottest - 1 && at(field.degree, field.firstResinRow * field.columns) > 0.3) break
    hottest = Math.max(hottest, now)
  }
  return hottest - ZERO_C
}
