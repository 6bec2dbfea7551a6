import { ok, type InputProblem, type Result } from '../core/units'
import { JobProblem, PhotoClient, type PhotoSize } from '../workers'
import { planStorage } from './storageDesk'

/** What importing and showing photos asks of the worker. */
export type PhotoWorker = Pick<PhotoClient, 'open' | 'reduce' | 'close' | 'isOpen'>

let client: PhotoClient | null = null
let standIn: PhotoWorker | null = null

/** The one photo worker of this page. */
export function photoClient(): PhotoClient {
  client ??= new PhotoClient()
  return client
}

/** The worker that imports decode with; another one where there are no workers (tests in Node). */
export const photoWorker = (): PhotoWorker => standIn ?? photoClient()

export const setPhotoWorker = (worker: PhotoWorker): void => {
  standIn = worker
}

/** A stored photo, or null when this browser has none of that hash. */
export async function getPhotoBytes(hash: string): Promise<Blob | null> {
  return (await planStorage()).readPhoto(hash)
}

const failed = (problem: InputProblem): Result<never> => ({ ok: false, problem })

/** Runs a worker's job; the problem that it ends with is a result, anything else stays an error. */
export async function asResult<T>(job: Promise<T>): Promise<Result<T>> {
  try {
    return ok(await job)
  } catch (error) {
    if (error instanceof JobProblem) return failed(error.problem)
    throw error
  }
}

/**
 * Makes a stored photo ready for `photoClient().preview`, `crop` and `rectify`.
 * @returns its size; problems 'photo-missing' and those of decoding
 */
export async function openStoredPhoto(hash: string): Promise<Result<PhotoSize>> {
  const bytes = await getPhotoBytes(hash)
  if (bytes === null) return failed({ code: 'photo-missing', values: {} })
  return asResult(photoWorker().open(hash, bytes))
}
