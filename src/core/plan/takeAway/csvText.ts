export type CsvCell = string | number | null

/** Excel and its like take a text that begins with one of these for a formula. */
const FORMULA_START = /^[=+\-@\t\r]/

function cellText(cell: CsvCell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return String(cell)
  const safe = FORMULA_START.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

/**
 * Rows as comma-separated text with a byte order mark.
 * @returns lines ended by CR LF; texts quoted where they must be, and never a formula
 * Source: RFC 4180. Rules: TAK-3.
 */
export const csvText = (head: readonly string[], rows: readonly (readonly CsvCell[])[]): string =>
  `\uFEFF${[head, ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('')}`
