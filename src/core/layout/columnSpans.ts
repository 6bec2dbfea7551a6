import type { Bounds, Point, Region } from '../geometry'

/** A stretch inside the regions along one column, from its lesser to its greater coordinate, mm. */
export type Span = readonly [from: number, to: number]

export interface Columns {
  /** Middle of each column along the axis, mm. */
  readonly at: readonly number[]
  readonly spans: readonly (readonly Span[])[]
}

/**
 * Where regions lie along evenly spaced columns.
 * @param axis 0: columns stand along x and run in y; 1: the other way round
 * @param stepMm greatest spacing; columns stand in the middle of equal strips, so never on a corner of the bounds
 */
export function columnSpans(
  regions: readonly Region<Point>[],
  bounds: Bounds,
  axis: 0 | 1,
  stepMm: number,
): Columns {
  const from = axis === 0 ? bounds.minX : bounds.minY
  const lengthMm = (axis === 0 ? bounds.maxX : bounds.maxY) - from
  const count = Math.max(1, Math.ceil(lengthMm / stepMm))
  const step = lengthMm / count
  const crossings = Array.from({ length: count }, (): number[] => [])
  for (const ring of regions.flatMap(({ outer, holes }) => [outer, ...holes])) {
    ring.forEach((a, index) =>
      addCrossings(crossings, a, ring[(index + 1) % ring.length] ?? a, { axis, from, step }),
    )
  }
  return {
    at: crossings.map((_, index) => from + (index + 0.5) * step),
    spans: crossings.map(spansOf),
  }
}

function addCrossings(
  crossings: readonly number[][],
  a: Point,
  b: Point,
  { axis, from, step }: { readonly axis: 0 | 1; readonly from: number; readonly step: number },
): void {
  const [s, e] = [(a[axis] - from) / step - 0.5, (b[axis] - from) / step - 0.5]
  const [low, high] = [Math.min(s, e), Math.max(s, e)]
  const other = axis === 0 ? 1 : 0
  // Half-open, so that a corner on a column is counted once.
  for (let column = Math.max(0, Math.ceil(low)); column < high && column < crossings.length; column++) {
    crossings[column]?.push(a[other] + ((b[other] - a[other]) * (column - s)) / (e - s))
  }
}

function spansOf(crossings: readonly number[]): readonly Span[] {
  const sorted = [...crossings].sort((p, q) => p - q)
  return sorted.flatMap((from, index): Span[] => {
    const to = sorted[index + 1]
    return index % 2 === 0 && to !== undefined ? [[from, to]] : []
  })
}
