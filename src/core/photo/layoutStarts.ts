import type { Point } from '../geometry'

/** A taped distance between two marks, by their places in the list. */
export interface Side {
  readonly a: number
  readonly b: number
  readonly lengthMm: number
}

/** With n marks a chain of triangles has 2^(n−2) foldings; beyond this many the seeds must do. */
const MOST_FOLDINGS = 64

/**
 * Starting places for solving marks from distances: the seeds brought to scale, and every folding of a chain of
 * triangles (each new mark on either side of the line through two that are placed already).
 */
export function layoutStarts(
  count: number,
  sides: readonly Side[],
  seeds: readonly Point[] | null,
): readonly (readonly Point[])[] {
  const starts: (readonly Point[])[] = []
  if (seeds) starts.push(seedsToScale(seeds, sides))
  for (let folding = 0; folding < Math.min(2 ** (count - 2), MOST_FOLDINGS); folding++) {
    const start = foldedTriangles(count, sides, folding)
    if (start) starts.push(start)
  }
  if (starts.length === 0) starts.push(ringOfMarks(count, sides))
  return starts
}

function seedsToScale(seeds: readonly Point[], sides: readonly Side[]): readonly Point[] {
  let taped = 0
  let seen = 0
  for (const s of sides) {
    const a = seeds[s.a] ?? [0, 0]
    const b = seeds[s.b] ?? [0, 0]
    taped += s.lengthMm
    seen += Math.hypot(a[0] - b[0], a[1] - b[1])
  }
  const k = seen > 0 ? taped / seen : 1
  return seeds.map(([x, y]): Point => [x * k, y * k])
}

/** Marks placed one after the other from two that are placed; null when a mark has no two to start from. */
function foldedTriangles(count: number, sides: readonly Side[], folding: number): readonly Point[] | null {
  const first = sides[0]
  if (!first) return null
  const placed = new Map<number, Point>([
    [first.a, [0, 0]],
    [first.b, [first.lengthMm, 0]],
  ])
  while (placed.size < count) {
    const next = nextTriangle(count, sides, placed)
    if (next === null) return null
    const side = (folding >> (placed.size - 2)) & 1
    placed.set(next.mark, apex(placed.get(next.p), placed.get(next.q), next.fromP, next.fromQ, side))
  }
  return Array.from({ length: count }, (_, i): Point => placed.get(i) ?? [0, 0])
}

interface Triangle {
  readonly mark: number
  readonly p: number
  readonly q: number
  readonly fromP: number
  readonly fromQ: number
}

function nextTriangle(
  count: number,
  sides: readonly Side[],
  placed: ReadonlyMap<number, Point>,
): Triangle | null {
  for (let mark = 0; mark < count; mark++) {
    if (placed.has(mark)) continue
    const bases = sides.flatMap((s) => {
      const other = s.a === mark ? s.b : s.b === mark ? s.a : -1
      return placed.has(other) ? [{ other, lengthMm: s.lengthMm }] : []
    })
    const p = bases[0]
    const q = bases.find((base) => base.other !== p?.other)
    if (p && q) return { mark, p: p.other, q: q.other, fromP: p.lengthMm, fromQ: q.lengthMm }
  }
  return null
}

function apex(a: Point = [0, 0], b: Point = [0, 0], fromA: number, fromB: number, side: number): Point {
  const base = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  const along = (fromA * fromA - fromB * fromB + base * base) / (2 * base)
  const across =
    Math.sqrt(Math.max(fromA * fromA - along * along, (0.05 * base) ** 2)) * (side === 0 ? 1 : -1)
  const [ux, uy] = [(b[0] - a[0]) / base, (b[1] - a[1]) / base]
  return [a[0] + along * ux - across * uy, a[1] + along * uy + across * ux]
}

function ringOfMarks(count: number, sides: readonly Side[]): readonly Point[] {
  const radius = Math.max(...sides.map((s) => s.lengthMm)) / 2
  return Array.from({ length: count }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / count
    return [radius * Math.cos(angle), radius * Math.sin(angle)]
  })
}
