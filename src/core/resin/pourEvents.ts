import type { PourHeat } from './pourPlanResult'
import { roundUpHalfHour } from './wakingHours'

/** One thing to do at an hour; hours from midnight before the first pour. */
export interface PourEvent {
  /** Stable for the same step of the plan, such as `layer-2-pour`. */
  readonly key: string
  readonly kind: 'pour' | 'look' | 'ready' | 'demould' | 'flatten'
  /** Counted from 1; null for what concerns the whole cast. */
  readonly layer: number | null
  readonly hour: number
  readonly durationMinutes: number
  /** What the surface should read at a look, °C. */
  readonly surfaceC: number | null
  /** Whether the layer below must be scuffed first. */
  readonly scuffBefore: boolean
}

const SHORT_MINUTES = 15

/**
 * Every pour, look, finger test, demould and flattening of a plan, in order of time.
 * @param handlingMinutes  how long one batch takes; a pour lasts as long as its batches
 * Rules: RES-23.
 */
export function pourEvents(heat: PourHeat, handlingMinutes: number): readonly PourEvent[] {
  const usual = { durationMinutes: SHORT_MINUTES, surfaceC: null, scuffBefore: false }
  const events: PourEvent[] = heat.layers.flatMap((layer): readonly PourEvent[] => {
    const of = { ...usual, layer: layer.layer }
    const key = `layer-${layer.layer}`
    const pour: PourEvent = {
      ...of,
      key: `${key}-pour`,
      kind: 'pour',
      hour: layer.startHour,
      durationMinutes: handlingMinutes * layer.batches.count,
      scuffBefore: layer.scuffBefore,
    }
    const looks = layer.looks.map((look): PourEvent => ({
      ...of,
      key: `${key}-look-${look.why}`,
      kind: 'look',
      hour: look.hour,
      surfaceC: look.surfaceC,
    }))
    const ready: readonly PourEvent[] =
      layer.readyHour === null
        ? []
        : [{ ...of, key: `${key}-ready`, kind: 'ready', hour: roundUpHalfHour(layer.readyHour) }]
    return [pour, ...looks, ...ready]
  })
  const finish = (['demould', 'flatten'] as const).flatMap((kind): readonly PourEvent[] => {
    const hour = kind === 'demould' ? heat.demouldHour : heat.flattenHour
    return hour === null ? [] : [{ ...usual, key: kind, kind, layer: null, hour }]
  })
  return [...events, ...finish].sort((one, other) => one.hour - other.hour)
}

/** @returns the UID of an event: the same for the same job and step, whatever its hour. Rules: RES-23. */
export const eventUid = (jobId: string, event: PourEvent): string => `${jobId}-${event.key}@waneline`
