import { describe, expect, it } from 'vitest'
import { slabFillTask } from '../../tests/support/fillCases'
import { type FillFinding, fillSearch, type FillTask, type SearchState } from '../core/layout'
import { FillClient } from './fillClient'
import { type FillOrder, runFillJob } from './fillJob'
import type { FromSearch, ToSearch } from './searchDesks'
import type { WorkerLike } from './workerLink'

const TASK = slabFillTask(2)
const ORDER: FillOrder = { task: TASK, forMs: 3_000 }

/** Stands in for the worker: does a job when told to, on a clock that jumps ahead by 100 ms at every look. */
class FakeWorker extends EventTarget implements WorkerLike {
  readonly asked: ToSearch<FillOrder>[] = []
  ended = false

  postMessage(message: unknown): void {
    this.asked.push(message as ToSearch<FillOrder>)
  }

  work(): void {
    const job = this.asked.at(-1)
    if (job === undefined) throw new Error('nothing was asked')
    let ms = 0
    runFillJob(
      job,
      (message) => this.dispatchEvent(new MessageEvent('message', { data: structuredClone(message) })),
      () => (ms += 100),
    )
  }

  terminate(): void {
    this.ended = true
  }
}

function desk() {
  const workers: FakeWorker[] = []
  const client = new FillClient(() => {
    const worker = new FakeWorker()
    workers.push(worker)
    return worker
  })
  return { client, workers }
}

describe('FillClient', () => {
  it('tells proposals as they come and answers what a direct search answers after as many looks', async () => {
    const { client, workers } = desk()
    const told: { readonly value: number; readonly fraction: number }[] = []
    const answer = client.search(ORDER, {
      onIncumbent: ({ value }, fraction) => told.push({ value, fraction }),
    })
    workers[0]?.work()
    const state = await answer
    const direct = fillSearch(TASK)
    if (!direct.ok) throw new Error(direct.problem.code)
    expect(direct.value.step(state.evaluations)).toMatchObject({
      value: state.value,
      incumbent: state.incumbent,
    })
    expect(state.incumbent?.proposals.length).toBeGreaterThan(0)
    const fractions = told.map(({ fraction }) => fraction)
    expect(fractions).toEqual(fractions.toSorted((a, b) => a - b))
    expect(fractions.at(-1)).toBeGreaterThan(0.9)
    expect(told.some(({ value }) => value > 0)).toBe(true)
  })

  it('lets the newest search win, and ends its worker on cancel', async () => {
    const { client, workers } = desk()
    const old = client.search(ORDER)
    const stop = new AbortController()
    const newest = client.search(ORDER, { signal: stop.signal })
    await expect(old).rejects.toMatchObject({ name: 'AbortError' })
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
    stop.abort(new Error('enough'))
    await expect(newest).rejects.toThrow('enough')
    expect(workers.map(({ ended }) => ended)).toEqual([true, true])
  })

  it('rejects with what a task lacks, and when the worker breaks down or is ended', async () => {
    const { client, workers } = desk()
    const lacking = client.search({ ...ORDER, task: { ...TASK, offcuts: [] } })
    workers[0]?.work()
    await expect(lacking).rejects.toMatchObject({ problem: { code: 'fill-no-offcuts' } })
    const broken = client.search(ORDER)
    workers[0]?.dispatchEvent(new Event('error'))
    await expect(broken).rejects.toMatchObject({ problem: { code: 'fill-worker-crashed' } })
    const last = client.search(ORDER)
    client.end()
    await expect(last).rejects.toMatchObject({ problem: { code: 'fill-worker-ended' } })
  })

  it('turns an error of our own into a problem', () => {
    const told: FromSearch<SearchState<FillFinding>>[] = []
    const task = { ...TASK, offcuts: [{ key: 'x', region: null, grainRad: 0 }] } as unknown as FillTask
    runFillJob(
      { jobId: 1, task: { task, forMs: 1 } },
      (message) => told.push(message),
      () => 0,
    )
    expect(told).toMatchObject([{ kind: 'failed', problem: { code: 'fill-worker-failed' } }])
  })
})
