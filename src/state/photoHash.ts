import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'

/**
 * SHA-256 in lower-case hex. The browser's own is quicker but is missing on plain http, where a workshop's own computer
 * may well serve this page; both give the same.
 */
export async function photoHash(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const subtle = globalThis.crypto?.subtle
  return bytesToHex(
    subtle === undefined ? sha256(bytes) : new Uint8Array(await subtle.digest('SHA-256', bytes)),
  )
}
