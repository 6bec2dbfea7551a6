import { OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** a, b, c, d, e, f of x' = a·x + c·y + e and y' = b·x + d·y + f, as PDF writes them (ISO 32000, 8.3.3). */
type Matrix = readonly [number, number, number, number, number, number]

export type PdfPoint = readonly [xMm: number, yMm: number]

/** Chromium writes a dashed line as filled dashes, so such a line is a `fill` with one closed run per dash. */
export interface PdfPath {
  readonly paint: 'stroke' | 'fill' | 'fill-and-stroke' | 'clip'
  /** Each a run of points; curves are given by points along them. */
  readonly lines: readonly { readonly points: readonly PdfPoint[]; readonly closed: boolean }[]
  readonly lineWidthMm: number
}

interface GraphicsState {
  readonly matrix: Matrix
  readonly lineWidth: number
}

/** `inner` first, then `outer`. */
const compose = (outer: Matrix, inner: Matrix): Matrix => [
  outer[0] * inner[0] + outer[2] * inner[1],
  outer[1] * inner[0] + outer[3] * inner[1],
  outer[0] * inner[2] + outer[2] * inner[3],
  outer[1] * inner[2] + outer[3] * inner[3],
  outer[0] * inner[4] + outer[2] * inner[5] + outer[4],
  outer[1] * inner[4] + outer[3] * inner[5] + outer[5],
]

const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0]

const asMatrix = (args: unknown): Matrix => {
  const [a, b, c, d, e, f] = Array.from((args ?? IDENTITY) as ArrayLike<number>)
  return [a ?? 1, b ?? 0, c ?? 0, d ?? 1, e ?? 0, f ?? 0]
}

const apply = (m: Matrix, x: number, y: number): PdfPoint => [
  m[0] * x + m[2] * y + m[4],
  m[1] * x + m[3] * y + m[5],
]

/** How much longer a length becomes; print matrices do not stretch one way only. */
const scaleOf = (m: Matrix): number => Math.sqrt(Math.abs(m[0] * m[3] - m[1] * m[2]))

/** How the reader numbers the parts of a path: move, line, cubic curve, quadratic curve, close. */
const PART_SIZES = [2, 2, 6, 4, 0] as const
const CURVE_STEPS = 16

type XY = readonly [number, number]

/** De Casteljau's points along a curve of any degree, without its start. */
const alongCurve = (controls: readonly XY[]): readonly XY[] =>
  Array.from({ length: CURVE_STEPS }, (_, i) => {
    const t = (i + 1) / CURVE_STEPS
    let level = controls
    while (level.length > 1) {
      level = level.slice(1).map(([x, y], k): XY => {
        const [x0, y0] = level[k] ?? [x, y]
        return [x0 + (x - x0) * t, y0 + (y - y0) * t]
      })
    }
    return level[0] ?? [0, 0]
  })

const pairs = (numbers: readonly number[]): readonly XY[] =>
  numbers.flatMap((x, i) => (i % 2 === 0 ? [[x, numbers[i + 1] ?? 0] as const] : []))

const linesOf = (data: readonly number[], matrix: Matrix): PdfPath['lines'] => {
  const lines: { points: PdfPoint[]; closed: boolean }[] = []
  let at: XY = [0, 0]
  let place = 0
  while (place < data.length) {
    const part = data[place] ?? 0
    const size = PART_SIZES[part]
    if (size === undefined) throw new Error(`unknown part ${part} of a path in the PDF`)
    const points = pairs(data.slice(place + 1, place + 1 + size))
    place += 1 + size
    if (part === 4) {
      const last = lines.at(-1)
      if (last) last.closed = true
      continue
    }
    if (part === 0) lines.push({ points: [], closed: false })
    const reached = part >= 2 ? alongCurve([at, ...points]) : points
    lines.at(-1)?.points.push(...reached.map(([x, y]) => apply(matrix, x, y)))
    at = points.at(-1) ?? at
  }
  return lines
}

const paintOf = (op: number): PdfPath['paint'] => {
  if (op === OPS.stroke || op === OPS.closeStroke) return 'stroke'
  if (op === OPS.fill || op === OPS.eoFill) return 'fill'
  return op === OPS.endPath ? 'clip' : 'fill-and-stroke'
}

/** Chromium sets line widths in a dictionary of graphics parameters, a list of names with values. */
const lineWidthIn = (parameters: unknown): { readonly lineWidth?: number } => {
  const found = (parameters as readonly (readonly [string, unknown])[]).find(([name]) => name === 'LW')
  return found ? { lineWidth: Number(found[1]) } : {}
}

const pathOf = (args: readonly unknown[], state: GraphicsState): PdfPath => {
  const [op, [data]] = args as readonly [number, readonly [ArrayLike<number> | null]]
  return {
    paint: paintOf(op),
    lines: linesOf(Array.from(data ?? []), state.matrix),
    lineWidthMm: state.lineWidth * scaleOf(state.matrix),
  }
}

/**
 * The lines and shapes that a page's operators draw.
 * @param toMm from the page's own space to millimetres
 */
export const pathsOf = (
  operators: readonly number[],
  argumentLists: readonly unknown[],
  toMm: Matrix,
): readonly PdfPath[] => {
  const paths: PdfPath[] = []
  const saved: GraphicsState[] = []
  let state: GraphicsState = { matrix: toMm, lineWidth: 1 }
  const save = (): unknown => saved.push(state)
  const restore = (): void => {
    state = saved.pop() ?? state
  }
  const transform = (matrix: Matrix): void => {
    state = { ...state, matrix: compose(state.matrix, matrix) }
  }
  operators.forEach((op, i) => {
    const args = (argumentLists[i] ?? []) as readonly unknown[]
    if (op === OPS.save) save()
    else if (op === OPS.restore || op === OPS.paintFormXObjectEnd) restore()
    else if (op === OPS.transform) transform(asMatrix(args))
    else if (op === OPS.paintFormXObjectBegin) {
      save()
      transform(asMatrix(args[0]))
    } else if (op === OPS.setLineWidth) state = { ...state, lineWidth: args[0] as number }
    else if (op === OPS.setGState) state = { ...state, ...lineWidthIn(args[0]) }
    else if (op === OPS.constructPath) paths.push(pathOf(args, state))
  })
  return paths
}
