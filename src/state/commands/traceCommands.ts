import type { PxPoint } from '../../core/geometry'
import type { Plan, Trace } from '../../core/plan'
import { InvariantError } from '../../core/units'
import type { Command } from '../command'
import {
  itemById,
  patched,
  patchedList,
  withAdded,
  withItem,
  withPhotoCapture,
  withSlab,
  withoutItem,
} from '../planEdits'

/** The chalked line: origin and direction of the slab's own frame. */
export const setDatum: Command<{
  readonly slabId: string
  readonly photoId: string
  readonly fromPx: PxPoint
  readonly toPx: PxPoint
}> = {
  name: 'setDatum',
  history: 'step',
  apply: (plan, { slabId, photoId, fromPx, toPx }) =>
    withSlab(plan, slabId, (slab) =>
      withPhotoCapture(slab, (capture) => {
        itemById(capture.photos, photoId, 'photo')
        return patched(capture, { datum: { photoId, fromPx, toPx } })
      }),
    ),
}

interface TraceAt {
  readonly slabId: string
  readonly traceId: string
}

const withTraces = (plan: Plan, slabId: string, edit: (traces: readonly Trace[]) => readonly Trace[]): Plan =>
  withSlab(plan, slabId, (slab) =>
    withPhotoCapture(slab, (capture) => patchedList(capture, 'traces', edit(capture.traces))),
  )

const withTrace = (plan: Plan, { slabId, traceId }: TraceAt, edit: (trace: Trace) => Trace): Plan =>
  withTraces(plan, slabId, (traces) => withItem(traces, traceId, 'trace', edit))

export const addTrace: Command<
  TraceAt & {
    readonly photoId: string
    readonly meaning: Trace['meaning']
    readonly ringPx: readonly PxPoint[]
    /** Left out: drawn by hand. */
    readonly origin?: Trace['origin']
  }
> = {
  name: 'addTrace',
  history: 'step',
  apply: (plan, { slabId, photoId, traceId, meaning, ringPx, origin = { kind: 'hand' } }) =>
    withSlab(plan, slabId, (slab) =>
      withPhotoCapture(slab, (capture) => {
        itemById(capture.photos, photoId, 'photo')
        const trace = { id: traceId, photoId, meaning, ringPx, origin }
        return { ...capture, traces: withAdded(capture.traces, trace, 'trace') }
      }),
    ),
}

/** The slab's outline on a photo: in the place of the one that is there, or a new one. */
export const setOutline: Command<
  TraceAt & {
    readonly photoId: string
    readonly ringPx: readonly PxPoint[]
    readonly origin: Trace['origin']
  }
> = {
  name: 'setOutline',
  history: 'step',
  apply: (plan, { slabId, photoId, traceId, ringPx, origin }) =>
    withTraces(plan, slabId, (traces) => {
      const before = traces.find((trace) => trace.photoId === photoId && trace.meaning.kind === 'outline')
      if (before !== undefined) {
        return withItem(traces, before.id, 'trace', (trace) => patched(trace, { ringPx, origin }))
      }
      const meaning = { kind: 'outline' } as const
      return withAdded(traces, { id: traceId, photoId, meaning, ringPx, origin }, 'trace')
    }),
}

export const replaceTraceRing: Command<TraceAt & { readonly ringPx: readonly PxPoint[] }> = {
  name: 'replaceTraceRing',
  history: 'step',
  apply: (plan, args) => withTrace(plan, args, (trace) => patched(trace, { ringPx: args.ringPx })),
}

const checkIndex = (index: number, limit: number): void => {
  if (!Number.isInteger(index) || index < 0 || index >= limit) {
    throw new InvariantError('no such point of the trace', { index })
  }
}

interface PointAt extends TraceAt {
  readonly index: number
  readonly atPx: PxPoint
}

export const moveTracePoint: Command<PointAt> = {
  name: 'moveTracePoint',
  history: 'step',
  apply: (plan, args) =>
    withTrace(plan, args, (trace) => {
      checkIndex(args.index, trace.ringPx.length)
      return patched(trace, { ringPx: trace.ringPx.with(args.index, args.atPx) })
    }),
}

/** The new point becomes number `index` of the ring. */
export const insertTracePoint: Command<PointAt> = {
  name: 'insertTracePoint',
  history: 'step',
  apply: (plan, args) =>
    withTrace(plan, args, (trace) => {
      checkIndex(args.index, trace.ringPx.length + 1)
      return { ...trace, ringPx: trace.ringPx.toSpliced(args.index, 0, args.atPx) }
    }),
}

export const deleteTracePoint: Command<TraceAt & { readonly index: number }> = {
  name: 'deleteTracePoint',
  history: 'step',
  apply: (plan, args) =>
    withTrace(plan, args, (trace) => {
      checkIndex(args.index, trace.ringPx.length)
      return { ...trace, ringPx: trace.ringPx.toSpliced(args.index, 1) }
    }),
}

export const setTraceMeaning: Command<TraceAt & { readonly meaning: Trace['meaning'] }> = {
  name: 'setTraceMeaning',
  history: 'step',
  apply: (plan, args) => withTrace(plan, args, (trace) => patched(trace, { meaning: args.meaning })),
}

export const removeTrace: Command<TraceAt> = {
  name: 'removeTrace',
  history: 'step',
  apply: (plan, { slabId, traceId }) =>
    withTraces(plan, slabId, (traces) => withoutItem(traces, traceId, 'trace')),
}
