import { describe, expect, it } from 'vitest'
import { type Breathe, JobFailed, JobQueue, SLICE_MS } from './jobQueue'
import type { FromWorker } from './protocol'

type Task = { readonly kind: 'long' | 'quick' | 'bad' | 'broken'; readonly lane: string | null }

/** A queue whose clock moves by hand: a long job takes 10 ms for each of its 100 bits. */
function bench() {
  const replies: FromWorker<string>[] = []
  const waiting: (() => void)[] = []
  let clockMs = 0
  let longestSliceMs = 0
  let sliceStartMs = 0
  const perform = async (task: Task, breathe: Breathe): Promise<string> => {
    if (task.kind === 'quick') return 'quick'
    if (task.kind === 'bad') throw new JobFailed({ code: 'photo-unreadable', values: {} })
    if (task.kind === 'broken') throw new Error('a bug')
    for (let bit = 0; bit < 100; bit++) {
      await breathe(bit / 100)
      clockMs += 10
      longestSliceMs = Math.max(longestSliceMs, clockMs - sliceStartMs)
    }
    return 'long'
  }
  const queue = new JobQueue<Task, string>({
    perform,
    reply: (message) => replies.push(message),
    laneOf: ({ lane }) => lane,
    nowMs: () => clockMs,
    pause: () =>
      new Promise((resolve) => {
        waiting.push(() => {
          sliceStartMs = clockMs
          resolve()
        })
      }),
    problemOf: (error) => ({ code: 'photo-worker-failed', values: { reason: String(error) } }),
  })
  /** Lets whatever waits go on, one turn of the event loop. */
  const turn = async (): Promise<void> => {
    for (const go of waiting.splice(0)) go()
    await new Promise((resolve) => setImmediate(resolve))
  }
  return { queue, replies, turn, isWaiting: () => waiting.length > 0, longestSliceMs: () => longestSliceMs }
}

const LONG: Task = { kind: 'long', lane: 'photo' }

const endsOf = (replies: readonly FromWorker<string>[]): readonly string[] =>
  replies.filter(({ kind }) => kind !== 'progress').map(({ jobId, kind }) => `${jobId} ${kind}`)

describe('JobQueue', () => {
  it('works in slices, reports progress, and answers', async () => {
    const { queue, replies, turn, isWaiting, longestSliceMs } = bench()
    const done = queue.receive({ kind: 'job', jobId: 1, task: LONG })
    await turn()
    while (isWaiting()) await turn()
    await done
    expect(replies.at(-1)).toEqual({ kind: 'done', jobId: 1, answer: 'long' })
    const fractions = replies.flatMap((reply) => (reply.kind === 'progress' ? [reply.fraction] : []))
    expect(fractions.length).toBeGreaterThan(20)
    expect(fractions).toEqual(fractions.toSorted((a, b) => a - b))
    expect(longestSliceMs()).toBeLessThanOrEqual(SLICE_MS + 10)
  })

  it('answers a quick job while a long one is under way', async () => {
    const { queue, replies, turn, isWaiting } = bench()
    void queue.receive({ kind: 'job', jobId: 1, task: LONG })
    await turn()
    await queue.receive({ kind: 'job', jobId: 2, task: { kind: 'quick', lane: null } })
    expect(endsOf(replies)).toEqual(['2 done'])
    while (isWaiting()) await turn()
    expect(endsOf(replies)).toEqual(['2 done', '1 done'])
  })

  it('stops a cancelled job at its next breath', async () => {
    const { queue, replies, turn } = bench()
    const done = queue.receive({ kind: 'job', jobId: 1, task: LONG })
    await turn()
    await queue.receive({ kind: 'cancel', jobId: 1 })
    await turn()
    await done
    expect(endsOf(replies)).toEqual(['1 cancelled'])
  })

  it('lets the newest job of a lane win, and leaves other lanes alone', async () => {
    const { queue, replies, turn, isWaiting } = bench()
    void queue.receive({ kind: 'job', jobId: 1, task: LONG })
    void queue.receive({ kind: 'job', jobId: 2, task: { ...LONG, lane: 'other' } })
    await turn()
    void queue.receive({ kind: 'job', jobId: 3, task: LONG })
    while (isWaiting()) await turn()
    expect(endsOf(replies).toSorted()).toEqual(['1 cancelled', '2 done', '3 done'])
  })

  it('forgets a cancel for a job that has ended or never was', async () => {
    const { queue, replies } = bench()
    await queue.receive({ kind: 'cancel', jobId: 9 })
    await queue.receive({ kind: 'job', jobId: 9, task: { kind: 'quick', lane: null } })
    expect(endsOf(replies)).toEqual(['9 done'])
  })

  it('passes on the problem of a job, and names a bug', async () => {
    const { queue, replies } = bench()
    await queue.receive({ kind: 'job', jobId: 1, task: { kind: 'bad', lane: null } })
    await queue.receive({ kind: 'job', jobId: 2, task: { kind: 'broken', lane: null } })
    expect(replies).toEqual([
      { kind: 'failed', jobId: 1, problem: { code: 'photo-unreadable', values: {} } },
      {
        kind: 'failed',
        jobId: 2,
        problem: { code: 'photo-worker-failed', values: { reason: 'Error: a bug' } },
      },
    ])
  })
})
