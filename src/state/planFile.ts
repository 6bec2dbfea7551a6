import { strFromU8, strToU8, type UnzipFileInfo, unzipSync, zipSync } from 'fflate'
import { type LostPart, parsePlan, type Plan, planSchema, readPlanText } from '../core/plan'
import { ok, problem, type Result } from '../core/units'
import { isZip } from './fileKind'
import { crc32, statedChecksums } from './zipChecksums'

/** A plan and the photos that it shows, as one file holds them. */
export interface PlanFile {
  readonly plan: Plan
  /** What could not be kept of the plan itself; missing photos are for the caller to see. */
  readonly lost: readonly LostPart[]
  /** By hash; not yet checked against it. */
  readonly photos: ReadonlyMap<string, Uint8Array<ArrayBuffer>>
}

export const PLAN_FILE_LIMITS = {
  planBytes: 32_000_000,
  photoBytes: 256_000_000,
  photos: 400,
  allBytes: 1_000_000_000,
  /** Photos are packed already and hardly shrink; what swells more than this is no photo. */
  photoSwelling: 20,
} as const

const PLAN_ENTRY = 'plan.json'
const PHOTO_ENTRY = /^photos\/([0-9a-f]{64})$/

/** The same plan makes the same file, byte by byte: no time of day in it. */
const SAME_TIME = new Date(1980, 0, 1)

/** Keys in the schema's order, whatever commands the plan has been through. */
function canonicalPlan(plan: Plan): unknown {
  const read = planSchema.safeParse(plan)
  // A plan that our own schema refuses is still the maker's work: it is written as it is and mended when opened.
  return read.success ? read.data : plan
}

/** The plan as text, for a file that can be read and compared line by line. */
export const planText = (plan: Plan): string => `${JSON.stringify(canonicalPlan(plan), null, 1)}\n`

/** A zip of `plan.json` and `photos/<hash>`. */
export function encodePlanFile(plan: Plan, photos: ReadonlyMap<string, Uint8Array>): Uint8Array<ArrayBuffer> {
  const sorted = [...photos].toSorted(([a], [b]) => (a < b ? -1 : 1))
  return new Uint8Array(
    zipSync(
      {
        [PLAN_ENTRY]: [strToU8(planText(plan)), { level: 9 }],
        ...Object.fromEntries(sorted.map(([hash, bytes]) => [`photos/${hash}`, [bytes, { level: 0 }]])),
      },
      { mtime: SAME_TIME },
    ),
  )
}

type Bytes = Uint8Array<ArrayBuffer>

/** Counts what a zip says of itself before anything is unpacked. */
class Customs {
  #bytes = 0
  #photos = 0
  /** The first entry that was too much. */
  refusal: string | null = null

  admits(entry: UnzipFileInfo): boolean {
    const isPhoto = PHOTO_ENTRY.test(entry.name)
    if (!isPhoto && entry.name !== PLAN_ENTRY) return false
    this.#bytes += entry.originalSize
    if (isPhoto) this.#photos++
    const isTooMuch = isPhoto ? isBadPhoto(entry) : entry.originalSize > PLAN_FILE_LIMITS.planBytes
    if (isTooMuch || this.#bytes > PLAN_FILE_LIMITS.allBytes || this.#photos > PLAN_FILE_LIMITS.photos) {
      this.refusal ??= entry.name
    }
    return this.refusal === null
  }
}

const isBadPhoto = ({ size, originalSize }: UnzipFileInfo): boolean =>
  originalSize > PLAN_FILE_LIMITS.photoBytes || originalSize > size * PLAN_FILE_LIMITS.photoSwelling

function unpacked(bytes: Bytes): Result<Record<string, Uint8Array>> {
  const customs = new Customs()
  try {
    // An entry that is longer than it says is cut off at what it says: its checksum or hash then fails.
    const entries = unzipSync(bytes, { filter: (entry) => customs.admits(entry) })
    return customs.refusal === null ? ok(entries) : problem('plan-file-too-large', { entry: customs.refusal })
  } catch {
    return problem('plan-file-damaged')
  }
}

function planIn(bytes: Uint8Array): Result<Pick<PlanFile, 'plan' | 'lost'>> {
  const json = readPlanText(strFromU8(bytes).replace(/^\uFEFF/, ''))
  return json.ok ? parsePlan(json.value) : json
}

/** The entries under `photos/`, by hash. */
function photosIn(entries: Readonly<Record<string, Uint8Array>>): PlanFile['photos'] {
  const photos = new Map<string, Bytes>()
  for (const [name, photo] of Object.entries(entries)) {
    const hash = PHOTO_ENTRY.exec(name)?.[1]
    if (hash !== undefined) photos.set(hash, new Uint8Array(photo))
  }
  return photos
}

function decodeZip(bytes: Bytes): Result<PlanFile> {
  const entries = unpacked(bytes)
  if (!entries.ok) return entries
  const planBytes = entries.value[PLAN_ENTRY]
  if (planBytes === undefined) return problem('plan-file-no-plan')
  if (statedChecksums(bytes).get(PLAN_ENTRY) !== crc32(planBytes)) return problem('plan-file-damaged')
  const read = planIn(planBytes)
  return read.ok ? ok({ ...read.value, photos: photosIn(entries.value) }) : read
}

/**
 * What a file that was saved by this program, or edited by hand, holds.
 * @returns problems 'plan-file-damaged', 'plan-file-too-large' {entry}, 'plan-file-no-plan', and those of reading a plan
 */
export function decodePlanFile(bytes: Bytes): Result<PlanFile> {
  if (isZip(bytes)) return decodeZip(bytes)
  if (bytes.length > PLAN_FILE_LIMITS.planBytes) return problem('plan-file-too-large', { entry: PLAN_ENTRY })
  const read = planIn(bytes)
  return read.ok ? ok({ ...read.value, photos: new Map() }) : read
}
