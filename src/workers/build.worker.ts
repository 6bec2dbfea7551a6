import { answerBuild, type BuildResult, type BuildTask } from '../core/plan'
import { JobQueue } from './jobQueue'
import type { FromWorker, ToWorker } from './protocol'

declare const self: DedicatedWorkerGlobalScope

/** A build is worked out in one go, in some tenths of a second at most. */
const queue = new JobQueue<BuildTask, BuildResult>({
  perform: async (task) => answerBuild(task),
  reply: (message: FromWorker<BuildResult>) => self.postMessage(message),
  laneOf: () => null,
  nowMs: () => performance.now(),
  pause: () => Promise.resolve(),
  problemOf: (error) => ({ code: 'build-worker-failed', values: { reason: String(error) } }),
})

self.onmessage = (event: MessageEvent<ToWorker<BuildTask>>) => {
  void queue.receive(event.data)
}
