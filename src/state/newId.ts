const ALPHABET = '0123456789abcdefghijklmnopqrstuvwxyz'

/**
 * A fresh id for a slab, a mark, a plan: 16 letters and digits drawn by the browser.
 * `crypto.randomUUID` would ask for https; this works on plain http as well.
 */
export function newId(): string {
  const drawn = crypto.getRandomValues(new Uint8Array(16))
  return Array.from(drawn, (byte) => ALPHABET[byte % ALPHABET.length]).join('')
}
