/** The first four bytes of a packed file. */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04

/** A plan.json by itself, perhaps edited by hand. */
export const isPlanText = (bytes: Uint8Array): boolean =>
  /^\s*\{/.test(new TextDecoder().decode(bytes.subarray(0, 200)))
