import { ok, type Result } from '../core/units'
import { JobProblem, PhotoClient } from '../workers'
import { planStorage } from './storageDesk'

let client: PhotoClient | null = null

/** The one photo worker of this page. */
export function photoClient(): PhotoClient {
  client ??= new PhotoClient()
  return client
}

/** A stored photo, or null when this browser has none of that hash. */
export async function getPhotoBytes(hash: string): Promise<Blob | null> {
  return (await planStorage()).readPhoto(hash)
}

/** Runs a worker's job; the problem that it ends with is a result, anything else stays an error. */
export async function asResult<T>(job: Promise<T>): Promise<Result<T>> {
  try {
    return ok(await job)
  } catch (error) {
    if (error instanceof JobProblem) return { ok: false, problem: error.problem }
    throw error
  }
}
