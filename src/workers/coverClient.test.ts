import { describe, expect, it, vi } from 'vitest'
import { randomSlab } from '../../tests/support/randomSlab'
import { coverSearch, type CoverTask } from '../core/layout'
import { CoverClient } from './coverClient'
import { runCoverJob } from './coverJob'
import type { FromCover, ToCover } from './coverProtocol'
import type { WorkerLike } from './workerLink'

const { outer, holes } = randomSlab(5)
const TABLE = { kind: 'largestTable', widthMm: 600, resinShare: 0, grain: null } as const
const TASK: Extract<CoverTask, { kind: 'largestTable' }> = { ...TABLE, regions: [{ outer, holes }] }
const BARE: typeof TASK = { ...TABLE, regions: [] }

/** Stands in for the worker: keeps what it was asked, and does it when told to. */
class FakeWorker extends EventTarget implements WorkerLike {
  readonly asked: ToCover[] = []
  ended = false

  postMessage(message: unknown): void {
    this.asked.push(message as ToCover)
  }

  /** Does the last job, on a clock that jumps ahead so that everything is told. */
  work(): void {
    const job = this.asked.at(-1)
    if (job === undefined) throw new Error('nothing was asked')
    let ms = 0
    runCoverJob(
      job,
      (message) => this.say(message),
      () => (ms += 100),
    )
  }

  say(data: FromCover): void {
    this.dispatchEvent(new MessageEvent('message', { data: structuredClone(data) }))
  }

  terminate(): void {
    this.ended = true
  }
}

function desk(mostWorkers = 2, idleMs = 60_000) {
  const workers: FakeWorker[] = []
  const make = (): FakeWorker => {
    const worker = new FakeWorker()
    workers.push(worker)
    return worker
  }
  return { client: new CoverClient(make, mostWorkers, idleMs), workers }
}

const at = (workers: readonly FakeWorker[], index: number): FakeWorker => {
  const worker = workers[index]
  if (worker === undefined) throw new Error(`no worker ${index}`)
  return worker
}

describe('CoverClient', () => {
  it('answers what a direct call answers, and tells what it finds on the way', async () => {
    const { client, workers } = desk()
    const fractions: number[] = []
    const answer = client.search(TASK, { onIncumbent: (_, fraction) => fractions.push(fraction) })
    at(workers, 0).work()
    const direct = coverSearch(TASK)
    if (!direct.ok) throw new Error(direct.problem.code)
    expect(await answer).toEqual({ ...direct.value.step(Infinity), trace: [] })
    expect(fractions.length).toBeGreaterThan(3)
    expect(Math.max(...fractions)).toBeLessThanOrEqual(1)
    expect(fractions.at(-1)).toBeGreaterThan(0.9)
  })

  it('rejects with what a task lacks', async () => {
    const { client, workers } = desk()
    const answer = client.search(BARE)
    at(workers, 0).work()
    await expect(answer).rejects.toMatchObject({ problem: { code: 'cover-no-wood' } })
  })

  it('ends the worker of a search that is cancelled, and starts the next on another', async () => {
    const { client, workers } = desk(1)
    const stop = new AbortController()
    const first = client.search(TASK, { signal: stop.signal })
    const second = client.search(TASK)
    expect(workers).toHaveLength(1)
    stop.abort(new Error('enough'))
    await expect(first).rejects.toThrow('enough')
    expect(at(workers, 0).ended).toBe(true)
    at(workers, 1).work()
    expect((await second).isDone).toBe(true)
    await expect(client.search(TASK, { signal: stop.signal })).rejects.toThrow('enough')
  })

  it('lets the newest search of a lane win, and leaves other lanes alone', async () => {
    const { client, workers } = desk(2)
    const other = client.search(TASK, { lane: 'other' })
    const old = client.search(TASK, { lane: 'same' })
    const waiting = client.search(TASK, { lane: 'third' })
    const newest = client.search(TASK, { lane: 'same' })
    await expect(old).rejects.toMatchObject({ name: 'AbortError' })
    expect(workers.map(({ ended }) => ended)).toEqual([false, true, false])
    at(workers, 0).work()
    at(workers, 2).work()
    at(workers, 0).work()
    const answers = await Promise.all([other, waiting, newest])
    expect(answers.map(({ isDone }) => isDone)).toEqual([true, true, true])
  })

  it('drops a message of a search that is no longer in hand', async () => {
    const { client, workers } = desk()
    const answer = client.search(TASK)
    const worker = at(workers, 0)
    worker.say({ kind: 'failed', jobId: 99, problem: { code: 'cover-worker-failed', values: {} } })
    worker.work()
    expect((await answer).isDone).toBe(true)
  })

  it('says when a worker broke down, and goes on with what waits', async () => {
    const { client, workers } = desk(1)
    const broken = client.search(TASK)
    const next = client.search(TASK)
    at(workers, 0).dispatchEvent(new Event('error'))
    await expect(broken).rejects.toMatchObject({ problem: { code: 'cover-worker-crashed' } })
    at(workers, 1).work()
    expect((await next).isDone).toBe(true)
  })

  it('ends idle workers after a while, a busy one never for being slow', async () => {
    vi.useFakeTimers()
    const { client, workers } = desk(2, 1000)
    const answer = client.search(TASK)
    const slow = client.search(TASK)
    at(workers, 0).work()
    await answer
    vi.advanceTimersByTime(60_000)
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
    vi.useRealTimers()
    client.end()
    await expect(slow).rejects.toMatchObject({ problem: { code: 'cover-worker-ended' } })
    expect(at(workers, 1).ended).toBe(true)
  })

  it('turns an error of our own into a problem', () => {
    const told: FromCover[] = []
    const broken = { ...TASK, regions: [{ outer: null, holes: [] }] } as unknown as CoverTask
    runCoverJob(
      { jobId: 1, task: broken },
      (message) => told.push(message),
      () => 0,
    )
    expect(told).toMatchObject([{ kind: 'failed', problem: { code: 'cover-worker-failed' } }])
  })
})
