import { type EdgeSet, numberAt } from './edgeSet'

/** How far wood reaches along and across a direction, mm from the pivot. */
export interface TurnedExtent {
  readonly minU: number
  readonly maxU: number
  readonly minV: number
  readonly maxV: number
}

/** @throws nothing; an empty set has an empty extent (min above max) */
export function turnedExtent(edges: EdgeSet, angleRad: number): TurnedExtent {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  let [minU, maxU, minV, maxV] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < edges.count; i += 1) {
    const u = numberAt(edges.ax, i) * cos + numberAt(edges.ay, i) * sin
    const v = numberAt(edges.ay, i) * cos - numberAt(edges.ax, i) * sin
    if (u < minU) minU = u
    if (u > maxU) maxU = u
    if (v < minV) minV = v
    if (v > maxV) maxV = v
  }
  return { minU, maxU, minV, maxV }
}
