import { describe, expect, it, vi } from 'vitest'
import { PhotoClient } from './photoClient'
import type { FromWorker, PhotoAnswer, PhotoTask, ToWorker } from './protocol'
import type { WorkerLike } from './workerLink'

const SIZE = { widthPx: 30, heightPx: 20 }
const BYTES = new Blob(['photo'])
const BITMAP = { width: 3, height: 2, close: () => undefined } as unknown as ImageBitmap

/** Stands in for the worker: keeps what it was asked, and answers when told to. */
class FakeWorker extends EventTarget implements WorkerLike {
  readonly asked: ToWorker<PhotoTask>[] = []
  ended = false
  /** Answers `open` and `close` at once, as long as it is quick. */
  isQuick = true

  postMessage(message: unknown): void {
    const asked = message as ToWorker<PhotoTask>
    this.asked.push(asked)
    if (!this.isQuick || asked.kind !== 'job') return
    if (asked.task.kind === 'open')
      this.say({ kind: 'done', jobId: asked.jobId, answer: { kind: 'size', size: SIZE } })
    if (asked.task.kind === 'close')
      this.say({ kind: 'done', jobId: asked.jobId, answer: { kind: 'closed' } })
  }

  say(data: FromWorker<PhotoAnswer>): void {
    queueMicrotask(() => this.dispatchEvent(new MessageEvent('message', { data })))
  }

  terminate(): void {
    this.ended = true
  }

  crash(): void {
    this.dispatchEvent(new Event('error'))
  }

  /** Number of the last job of a kind. */
  jobOf(kind: PhotoTask['kind']): number {
    const asked = this.asked.findLast((message) => message.kind === 'job' && message.task.kind === kind)
    if (asked === undefined) throw new Error(`no ${kind} was asked for`)
    return asked.jobId
  }
}

function desk(idleMs = 60_000): { readonly client: PhotoClient; readonly workers: FakeWorker[] } {
  const workers: FakeWorker[] = []
  const client = new PhotoClient(() => {
    const worker = new FakeWorker()
    workers.push(worker)
    return worker
  }, idleMs)
  return { client, workers }
}

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

const only = (workers: readonly FakeWorker[]): FakeWorker => {
  const [worker] = workers
  if (worker === undefined || workers.length > 1) throw new Error(`${workers.length} workers`)
  return worker
}

const TRANSFORM = {
  widthPx: 2,
  heightPx: 2,
  photoFromTarget: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  lens: { focalPx: 100, centrePx: [15, 10], k1: 0, k2: 0 },
} as const

describe('PhotoClient', () => {
  it('opens a photo once, however often it is asked to', async () => {
    const { client, workers } = desk()
    expect(await Promise.all([client.open('a', BYTES), client.open('a', BYTES)])).toEqual([SIZE, SIZE])
    expect(only(workers).asked).toHaveLength(1)
    expect([client.isOpen('a'), client.isOpen('b')]).toEqual([true, false])
  })

  it('gives the bitmap that the worker drew', async () => {
    const { client, workers } = desk()
    await client.open('a', BYTES)
    const preview = client.preview('a', 512)
    await turn()
    const worker = only(workers)
    worker.say({ kind: 'done', jobId: worker.jobOf('preview'), answer: { kind: 'bitmap', bitmap: BITMAP } })
    expect(await preview).toBe(BITMAP)
  })

  it('rejects with the problem of a photo that cannot be read, and tries it anew the next time', async () => {
    const { client, workers } = desk()
    await client.open('first', BYTES)
    const worker = only(workers)
    worker.isQuick = false
    const opening = client.open('a', BYTES)
    worker.say({
      kind: 'failed',
      jobId: worker.jobOf('open'),
      problem: { code: 'photo-unreadable', values: {} },
    })
    await expect(opening).rejects.toMatchObject({ problem: { code: 'photo-unreadable' } })
    worker.isQuick = true
    expect(await client.open('a', BYTES)).toEqual(SIZE)
  })

  it('refuses a photo that was never opened', async () => {
    await expect(desk().client.preview('nobody', 9)).rejects.toMatchObject({
      problem: { code: 'photo-not-open' },
    })
  })

  it('reports progress, and rejects an overtaken job with AbortError', async () => {
    const { client, workers } = desk()
    await client.open('a', BYTES)
    const seen: number[] = []
    const older = client.rectify('a', TRANSFORM, { onProgress: (fraction) => seen.push(fraction) })
    await turn()
    const worker = only(workers)
    const jobId = worker.jobOf('rectify')
    worker.say({ kind: 'progress', jobId, fraction: 0.5 })
    worker.say({ kind: 'cancelled', jobId })
    await expect(older).rejects.toMatchObject({ name: 'AbortError' })
    expect(seen).toEqual([0.5])
  })

  it('cancels by signal, tells the worker, and drops the stale answer', async () => {
    const { client, workers } = desk()
    await client.open('a', BYTES)
    const abort = new AbortController()
    const job = client.rectify('a', TRANSFORM, { signal: abort.signal })
    await turn()
    const worker = only(workers)
    const jobId = worker.jobOf('rectify')
    abort.abort()
    await expect(job).rejects.toMatchObject({ name: 'AbortError' })
    expect(worker.asked.at(-1)).toEqual({ kind: 'cancel', jobId })
    worker.say({ kind: 'done', jobId, answer: { kind: 'bitmap', bitmap: BITMAP } })
    await turn()
  })

  it('asks nothing of the worker for a signal that is off already', async () => {
    const { client, workers } = desk()
    await client.open('a', BYTES)
    await expect(client.preview('a', 9, { signal: AbortSignal.abort() })).rejects.toMatchObject({
      name: 'AbortError',
    })
    expect(only(workers).asked).toHaveLength(1)
  })

  it('says so to the jobs in hand when the worker crashes, and opens the photo again in a new one', async () => {
    const { client, workers } = desk()
    await client.open('a', BYTES)
    const lost = client.rectify('a', TRANSFORM)
    await turn()
    only(workers).crash()
    await expect(lost).rejects.toMatchObject({ problem: { code: 'photo-worker-crashed' } })
    expect(only(workers).ended).toBe(true)
    const again = client.preview('a', 9)
    await turn()
    const second = workers[1]
    expect(
      second?.asked.map((message) => (message.kind === 'job' ? message.task.kind : message.kind)),
    ).toEqual(['open', 'preview'])
    second?.say({ kind: 'done', jobId: second.jobOf('preview'), answer: { kind: 'bitmap', bitmap: BITMAP } })
    expect(await again).toBe(BITMAP)
    // The old worker's last word changes nothing.
    workers[0]?.crash()
    expect(second?.ended).toBe(false)
  })

  it('ends an idle worker, never a busy one, and starts another when there is work', async () => {
    vi.useFakeTimers()
    try {
      const { client, workers } = desk(1_000)
      await client.open('a', BYTES)
      const slow = client.preview('a', 9)
      await vi.advanceTimersByTimeAsync(60_000)
      const worker = only(workers)
      expect(worker.ended).toBe(false)
      worker.say({ kind: 'done', jobId: worker.jobOf('preview'), answer: { kind: 'bitmap', bitmap: BITMAP } })
      await slow
      await vi.advanceTimersByTimeAsync(1_001)
      expect(worker.ended).toBe(true)
      const next = client.preview('a', 9)
      await vi.advanceTimersByTimeAsync(1)
      expect(workers).toHaveLength(2)
      workers[1]?.crash()
      await expect(next).rejects.toBeDefined()
    } finally {
      vi.useRealTimers()
    }
  })

  it('gives back the memory of a photo that is closed', async () => {
    const { client, workers } = desk()
    await client.open('a', BYTES)
    await client.close('a')
    expect(only(workers).asked.at(-1)).toMatchObject({ task: { kind: 'close', hash: 'a' } })
    expect(client.isOpen('a')).toBe(false)
    await client.close('a')
    expect(only(workers).asked).toHaveLength(2)
  })
})
