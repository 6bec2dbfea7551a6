import { type Point, type Region, ringBounds } from '../../src/core/geometry'
import type { FillTask } from '../../src/core/layout'
import { seededRandom } from './seededRandom'

/** Cell of the bitmap and distance between two points of an offcut, mm. */
const CELL_MM = 4
const SLICE_MM = 10

interface Slice {
  readonly points: readonly Point[]
}

/**
 * A plain solver to hold the fill search against: random poses and nothing else. It shares no code with the search: a
 * bitmap of places too near to wood, offcuts as points in slices, whole offcuts only (what is left of one is not used
 * again), the best of many throws for one offcut after the other, begun anew again and again.
 * @param goOn asked after every layout
 * @returns the most worth found, mm², counted in points; the bitmap is on the safe side by most of a cell
 */
export function plainFillMm2(task: FillTask, seed: number, goOn: () => boolean): number {
  const random = seededRandom(seed)
  const { minX, minY, maxX, maxY } = ringBounds(task.blank)
  const [columns, rows] = [Math.ceil((maxX - minX) / CELL_MM), Math.ceil((maxY - minY) / CELL_MM)]
  const least = task.limits.leastJointMm + CELL_MM * 0.75
  const blocked = new Uint8Array(columns * rows)
  const block = (into: Uint8Array, x: number, y: number): void => {
    const reach = Math.ceil(least / CELL_MM)
    const [c, r] = [Math.floor((x - minX) / CELL_MM), Math.floor((y - minY) / CELL_MM)]
    for (let row = Math.max(0, r - reach); row <= Math.min(rows - 1, r + reach); row += 1) {
      for (let column = Math.max(0, c - reach); column <= Math.min(columns - 1, c + reach); column += 1) {
        const [cx, cy] = [minX + (column + 0.5) * CELL_MM, minY + (row + 0.5) * CELL_MM]
        if (Math.hypot(cx - x, cy - y) < least) into[row * columns + column] = 1
      }
    }
  }
  for (const [x, y] of task.wood.flatMap((face) => pointsIn(face, CELL_MM))) block(blocked, x, y)
  const open: Point[] = []
  for (let i = 0; i < blocked.length; i += 7) {
    if (blocked[i] === 0)
      open.push([minX + ((i % columns) + 0.5) * CELL_MM, minY + (Math.floor(i / columns) + 0.5) * CELL_MM])
  }
  const offcuts = task.offcuts.map(({ region, grainRad }) => ({
    slices: slicesOf(region, grainRad),
    grainRad,
  }))
  let most = 0
  do {
    const taken = blocked.slice()
    let worth = 0
    for (const { slices } of offcuts.toSorted(() => random.next() - 0.5)) {
      let best: { readonly worth: number; readonly points: readonly Point[] } | null = null
      for (let throws = 0; throws < 400; throws += 1) {
        const found = oneThrow(slices)
        if (found !== null && found.worth > (best?.worth ?? 0)) best = found
      }
      if (best === null) continue
      worth += best.worth
      for (const [x, y] of best.points) block(taken, x, y)
    }
    most = Math.max(most, worth)

    function oneThrow(
      slices: readonly Slice[],
    ): { readonly worth: number; readonly points: readonly Point[] } | null {
      const target = open[random.integer(0, open.length - 1)]
      const held = slices[random.integer(0, slices.length - 1)]?.points
      const at = held?.[random.integer(0, held.length - 1)]
      if (target === undefined || at === undefined) return null
      const within = task.limits.grainWithinRad ?? Math.PI
      const angle =
        task.tableGrainRad +
        random.between(-within, within) * random.next() +
        (random.next() < 0.5 ? Math.PI : 0)
      const side = task.limits.mayTurnOver && random.next() < 0.5 ? -1 : 1
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      const laid = slices.map(({ points }) =>
        points.map(([u, v]): Point => {
          const [du, dv] = [u - at[0], (v - at[1]) * side]
          return [target[0] + du * cos - dv * sin, target[1] + du * sin + dv * cos]
        }),
      )
      return bestRun(laid)
    }

    function bestRun(
      laid: readonly (readonly Point[])[],
    ): { readonly worth: number; readonly points: readonly Point[] } | null {
      let best: { readonly worth: number; readonly points: readonly Point[] } | null = null
      let run: Point[] = []
      let length = 0
      for (const slice of [...laid, null]) {
        const inside = slice?.filter(([x, y]) => x >= minX && x < maxX && y >= minY && y < maxY) ?? []
        const isClear =
          inside.length * CELL_MM >= task.limits.leastWidthMm &&
          inside.every(
            ([x, y]) =>
              taken[Math.floor((y - minY) / CELL_MM) * columns + Math.floor((x - minX) / CELL_MM)] === 0,
          )
        if (slice !== null && isClear) {
          run.push(...inside)
          length += SLICE_MM
          continue
        }
        const runWorth = run.length * CELL_MM * SLICE_MM - task.limits.costPerPieceMm2
        if (length >= task.limits.leastLengthMm && runWorth > (best?.worth ?? 0))
          best = { worth: runWorth, points: run }
        run = []
        length = 0
      }
      return best
    }
  } while (goOn())
  return most
}

/** Points along the grain in slices; v runs across. */
function slicesOf({ outer, holes }: Region, grainRad: number): readonly Slice[] {
  const [cos, sin] = [Math.cos(grainRad), Math.sin(grainRad)]
  const turn = ([x, y]: Point): Point => [x * cos + y * sin, y * cos - x * sin]
  const turned = { outer: outer.map(turn), holes: holes.map((hole) => hole.map(turn)) }
  const { minX, maxX } = ringBounds(turned.outer)
  const slices: Slice[] = []
  for (let u = minX + SLICE_MM / 2; u < maxX; u += SLICE_MM) {
    const points = columnIn(turned, u, CELL_MM).map((v): Point => [u, v])
    if (points.length > 0) slices.push({ points })
  }
  return slices
}

/** v of the points of one column in a face, by crossings. */
function columnIn({ outer, holes }: Region, u: number, stepMm: number): readonly number[] {
  const crossings = [outer, ...holes]
    .flatMap((ring) =>
      ring.flatMap(([x1, y1], i) => {
        const [x0, y0] = ring[(i + ring.length - 1) % ring.length] ?? [x1, y1]
        return x0 <= u !== x1 <= u ? [y0 + ((y1 - y0) * (u - x0)) / (x1 - x0)] : []
      }),
    )
    .sort((a, b) => a - b)
  const found: number[] = []
  for (let pair = 0; pair + 1 < crossings.length; pair += 2) {
    const past = crossings[pair + 1] ?? 0
    for (let v = (crossings[pair] ?? 0) + stepMm / 2; v < past; v += stepMm) found.push(v)
  }
  return found
}

function pointsIn(face: Region, stepMm: number): readonly Point[] {
  const { minX, maxX } = ringBounds(face.outer)
  const points: Point[] = []
  for (let u = minX + stepMm / 2; u < maxX; u += stepMm) {
    for (const v of columnIn(face, u, stepMm)) points.push([u, v])
  }
  return points
}
