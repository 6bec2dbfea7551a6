const hexOf = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')

/**
 * SHA-256 in lower-case hex. The browser's own is quicker but is missing on plain http, where a workshop's own computer
 * may well serve this page; both give the same.
 */
export async function photoHash(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const subtle = globalThis.crypto?.subtle
  if (subtle !== undefined) return hexOf(new Uint8Array(await subtle.digest('SHA-256', bytes)))
  const { sha256 } = await import('@noble/hashes/sha2.js')
  return hexOf(sha256(bytes))
}
