import { normaliseOutline, slabPoint } from '../geometry'
import { issueOf } from './issue'
import { blockedBy, type Found, ready } from './part'
import type { SlabShapeResult } from './planResult'
import type { Slab } from './schema'
import { shapeOf } from './slabShape'

type Station = Extract<Slab['capture'], { kind: 'stations' }>['stations'][number]

/** The outline of a slab that was taped from a datum instead of photographed; left of the datum is −y. */
export function stationsShape(slabId: string, stations: readonly Station[]): Found<SlabShapeResult> {
  const at = ['slabs', slabId, 'stations']
  if (stations.length < 2)
    return blockedBy([issueOf('stations-too-few', 'blocker', at, { stations: stations.length })])
  const unordered = stations.find((station, index) => station.alongMm <= (stations[index - 1]?.alongMm ?? -1))
  if (unordered !== undefined) {
    return blockedBy([issueOf('stations-out-of-order', 'blocker', at, { alongMm: unordered.alongMm })])
  }
  const crossed = stations.find(({ leftMm, rightMm }) => leftMm + rightMm <= 0)
  if (crossed !== undefined) {
    return blockedBy([issueOf('stations-edges-crossed', 'blocker', at, { alongMm: crossed.alongMm })])
  }
  const left = stations.map(({ alongMm, leftMm }) => slabPoint(alongMm, -leftMm))
  const right = stations.map(({ alongMm, rightMm }) => slabPoint(alongMm, rightMm))
  const outline = normaliseOutline([...left, ...right.reverse()])
  return outline.ok
    ? ready(shapeOf(outline.value, []))
    : blockedBy([issueOf('outline-no-area', 'blocker', at, { traceName: '' })])
}
