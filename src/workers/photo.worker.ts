import { JobQueue } from './jobQueue'
import { PhotoShelf } from './photoShelf'
import type { FromWorker, PhotoAnswer, PhotoTask, ToWorker } from './protocol'

declare const self: DedicatedWorkerGlobalScope

const shelf = new PhotoShelf()
const ticks = new MessageChannel()

/** Several jobs may wait for their turn at once: each message wakes the one that has waited longest. */
const waiting: (() => void)[] = []

ticks.port1.onmessage = () => waiting.shift()?.()

/** A turn of the event loop without the 4 ms that a timer would add. */
const pause = (): Promise<void> =>
  new Promise((resolve) => {
    waiting.push(resolve)
    ticks.port2.postMessage(null)
  })

const reply = (message: FromWorker<PhotoAnswer>): void => {
  const isBitmap = message.kind === 'done' && message.answer.kind === 'bitmap'
  self.postMessage(message, isBitmap ? [message.answer.bitmap] : [])
}

const queue = new JobQueue<PhotoTask, PhotoAnswer>({
  perform: (task, breathe) => shelf.perform(task, breathe),
  reply,
  laneOf: (task) => (task.kind === 'rectify' ? task.hash : null),
  nowMs: () => performance.now(),
  pause,
  problemOf: (error) => ({ code: 'photo-worker-failed', values: { reason: String(error) } }),
})

self.onmessage = (event: MessageEvent<ToWorker<PhotoTask>>) => {
  void queue.receive(event.data)
}
