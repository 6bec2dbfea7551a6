import { floodFrom, type Mask } from './maskRegions'

const NEAR_PX = 12

/**
 * The old mask with those changes of the new one that begin near some pixels: a correction must not undo what was right
 * elsewhere. Additions and removals hang together by themselves.
 */
export function changedNear(before: Mask, after: Mask, pixels: readonly number[]): Mask {
  const { widthPx, heightPx } = before
  const near: number[] = []
  for (const at of pixels) {
    const x = at % widthPx
    const y = Math.floor(at / widthPx)
    for (let j = Math.max(0, y - NEAR_PX); j <= Math.min(heightPx - 1, y + NEAR_PX); j++) {
      for (let i = Math.max(0, x - NEAR_PX); i <= Math.min(widthPx - 1, x + NEAR_PX); i++)
        near.push(j * widthPx + i)
    }
  }
  const changes = (from: 0 | 1): Uint8Array => {
    const inside = before.inside.map((value, at) => (value === from && after.inside[at] !== from ? 1 : 0))
    return floodFrom({ widthPx, heightPx, inside }, near, 1)
  }
  const added = changes(0)
  const removed = changes(1)
  return {
    widthPx,
    heightPx,
    inside: before.inside.map((value, at) => (added[at] === 1 ? 1 : removed[at] === 1 ? 0 : value)),
  }
}
