import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import * as z from 'zod/mini'
import { planSchema } from '../../src/core/plan'

const sorted = (json: unknown): unknown => {
  if (Array.isArray(json)) return json.map(sorted)
  if (typeof json !== 'object' || json === null) return json
  return Object.fromEntries(
    Object.entries(json)
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, value]) => [key, sorted(value)]),
  )
}

/** What a schema accepts as JSON Schema, in one order: keys, kinds, limits, patterns. */
export const describeSchema = (schema: z.core.$ZodType = planSchema): string =>
  JSON.stringify(sorted(z.toJSONSchema(schema)))

export const schemaHash = (schema?: z.core.$ZodType): string =>
  bytesToHex(sha256(utf8ToBytes(describeSchema(schema))))
