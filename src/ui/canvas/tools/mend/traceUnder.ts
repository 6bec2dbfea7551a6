import type { Point } from '../../../../core/geometry'
import type { Trace } from '../../../../core/plan'
import { traceEdgeAt } from '../../bodies'
import { tracesOf } from '../../handles'
import type { Scene } from '../toolTypes'

/** The trace whose line passes within reach of a screen point; null when there is none. */
export function traceUnder(scene: Scene, screen: Point, reachPx: number): Trace | null {
  const hit = traceEdgeAt(scene, screen, reachPx)
  return tracesOf(scene).find(({ id }) => id === hit?.traceId) ?? null
}
