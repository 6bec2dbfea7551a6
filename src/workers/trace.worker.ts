import { JobFailed, JobQueue } from './jobQueue'
import type { FromWorker, ToWorker } from './protocol'
import type { TraceAnswer, TraceTask } from './traceProtocol'
import { type TracedPicture, TraceTable } from './traceTable'

declare const self: DedicatedWorkerGlobalScope

/** Larger photos are traced on a smaller copy: pixels beyond this tell no more of an edge and take 4 bytes each. */
const MOST_TRACED_PX = 16_000_000

/** The pixels of a photo, upright. */
async function decoded(bytes: Blob): Promise<TracedPicture> {
  if (typeof OffscreenCanvas === 'undefined') {
    throw new JobFailed({ code: 'photo-worker-unsupported', values: {} })
  }
  const bitmap = await createImageBitmap(bytes, { imageOrientation: 'from-image' }).catch(() => {
    throw new JobFailed({ code: 'photo-unreadable', values: {} })
  })
  try {
    const photoPxPerPx = Math.max(1, Math.sqrt((bitmap.width * bitmap.height) / MOST_TRACED_PX))
    const widthPx = Math.floor(bitmap.width / photoPxPerPx)
    const heightPx = Math.floor(bitmap.height / photoPxPerPx)
    const context = new OffscreenCanvas(widthPx, heightPx).getContext('2d', { willReadFrequently: true })
    if (context === null) throw new JobFailed({ code: 'photo-no-memory', values: {} })
    context.imageSmoothingQuality = 'high'
    context.drawImage(bitmap, 0, 0, bitmap.width / photoPxPerPx, bitmap.height / photoPxPerPx)
    const { data } = context.getImageData(0, 0, widthPx, heightPx)
    return { picture: { widthPx, heightPx, rgba: data }, photoPxPerPx }
  } finally {
    bitmap.close()
  }
}

const table = new TraceTable(decoded)
const ticks = new MessageChannel()
const waiting: (() => void)[] = []

ticks.port1.onmessage = () => waiting.shift()?.()

const queue = new JobQueue<TraceTask, TraceAnswer>({
  perform: (task, breathe) => table.perform(task, breathe),
  reply: (message: FromWorker<TraceAnswer>) => self.postMessage(message),
  laneOf: (task) => (task.kind === 'outline' ? 'outline' : null),
  nowMs: () => performance.now(),
  // A turn of the event loop without the 4 ms that a timer would add.
  pause: () =>
    new Promise((resolve) => {
      waiting.push(resolve)
      ticks.port2.postMessage(null)
    }),
  problemOf: (error) => ({ code: 'trace-worker-failed', values: { reason: String(error) } }),
})

self.onmessage = (event: MessageEvent<ToWorker<TraceTask>>) => {
  void queue.receive(event.data)
}
