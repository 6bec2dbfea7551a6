import { PhotoClient } from '../workers/photoClient'

let client: PhotoClient | null = null

/** The one photo worker of this page, started when the first photo is shown. */
export function photoClient(): PhotoClient {
  client ??= new PhotoClient()
  return client
}
