import { runCoverJob } from './coverJob'
import type { FromCover, ToCover } from './coverProtocol'

declare const self: DedicatedWorkerGlobalScope

self.onmessage = (event: MessageEvent<ToCover>) => {
  runCoverJob(
    event.data,
    (message: FromCover) => self.postMessage(message),
    () => performance.now(),
  )
}
