import type { FillFinding, SearchState } from '../core/layout'
import { type FillOrder, runFillJob } from './fillJob'
import type { FromSearch, ToSearch } from './searchDesks'

declare const self: DedicatedWorkerGlobalScope

self.onmessage = (event: MessageEvent<ToSearch<FillOrder>>) => {
  runFillJob(
    event.data,
    (message: FromSearch<SearchState<FillFinding>>) => self.postMessage(message),
    () => performance.now(),
  )
}
