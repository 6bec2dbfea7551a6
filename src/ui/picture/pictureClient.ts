import { PhotoClient } from '../../workers'

/** Decoded photos take much memory, and a picture for the client is wanted now and then. */
const IDLE_MS = 30_000

let client: PhotoClient | null = null
let last: Promise<unknown> = Promise.resolve()

/**
 * A photo worker of the picture's own: the view on the screen calls off whatever else is drawn of its photo. Work waits
 * its turn, so that the picture for print and the one on the screen do not call each other off either.
 */
export function withPictureClient<T>(work: (client: PhotoClient) => Promise<T>): Promise<T> {
  client ??= new PhotoClient(undefined, IDLE_MS)
  const own = client
  const next = last.then(
    () => work(own),
    () => work(own),
  )
  last = next
  return next
}
