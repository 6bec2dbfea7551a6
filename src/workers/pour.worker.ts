import { answerPour, type PourResult, type PourTask } from '../core/plan'
import { JobQueue } from './jobQueue'
import type { FromWorker, ToWorker } from './protocol'

declare const self: DedicatedWorkerGlobalScope

/** A pour is worked out in one go, well under a second: the page asks for the newest only when the last is answered. */
const queue = new JobQueue<PourTask, PourResult>({
  perform: async (task) => answerPour(task),
  reply: (message: FromWorker<PourResult>) => self.postMessage(message),
  laneOf: () => null,
  nowMs: () => performance.now(),
  pause: () => Promise.resolve(),
  problemOf: (error) => ({ code: 'pour-worker-failed', values: { reason: String(error) } }),
})

self.onmessage = (event: MessageEvent<ToWorker<PourTask>>) => {
  void queue.receive(event.data)
}
