import type { Pixels } from './pixels'

/** Bits packed from the least significant upwards, as WebP lossless wants them. */
class BitWriter {
  readonly #bytes: number[] = []
  #pending = 0
  #count = 0

  write(value: number, bits: number): void {
    for (let i = 0; i < bits; i++) {
      this.#pending |= ((value >> i) & 1) << this.#count
      this.#count += 1
      if (this.#count === 8) this.#flush()
    }
  }

  bytes(): Uint8Array {
    if (this.#count > 0) this.#flush()
    return Uint8Array.from(this.#bytes)
  }

  #flush(): void {
    this.#bytes.push(this.#pending)
    this.#pending = 0
    this.#count = 0
  }
}

/**
 * A prefix code in which each of the 256 byte values has a code of 8 bits. Its code lengths are themselves coded
 * with one bit each: 0 for "unused", 1 for "8 bits".
 */
const writeByteCode = (out: BitWriter, unusedSymbols: number): void => {
  out.write(0, 1) // a normal code, not a simple one
  out.write(12 - 4, 4) // how many of the lengths below are given
  // The specification's order of the code length symbols is 17, 18, 0, 1, 2, 3, 4, 5, 16, 6, 7, 8, ...
  for (const symbol of [17, 18, 0, 1, 2, 3, 4, 5, 16, 6, 7, 8]) {
    out.write(symbol === 0 || symbol === 8 ? 1 : 0, 3)
  }
  out.write(0, 1) // lengths of all symbols follow
  for (let i = 0; i < 256; i++) out.write(1, 1)
  for (let i = 0; i < unusedSymbols; i++) out.write(0, 1)
}

const reversedByte = (value: number): number => {
  let reversed = 0
  for (let i = 0; i < 8; i++) reversed |= ((value >> i) & 1) << (7 - i)
  return reversed
}

/** The VP8L bit stream: no transforms, no colour cache, each pixel by its four bytes. */
const losslessStream = ({ widthPx, heightPx, rgba }: Pixels): Uint8Array => {
  const out = new BitWriter()
  out.write(0x2f, 8)
  out.write(widthPx - 1, 14)
  out.write(heightPx - 1, 14)
  out.write(0, 1) // alpha is not used
  out.write(0, 3) // version
  out.write(0, 1) // no transform
  out.write(0, 1) // no colour cache
  out.write(0, 1) // one set of prefix codes for the whole picture
  writeByteCode(out, 24) // green, followed by 24 length symbols that we do not use
  writeByteCode(out, 0) // red
  writeByteCode(out, 0) // blue
  writeByteCode(out, 0) // alpha
  out.write(1, 1) // distances: a simple code
  out.write(0, 1) // of one symbol
  out.write(0, 1) // written in one bit
  out.write(0, 1) // which is 0
  for (let at = 0; at < rgba.length; at += 4) {
    for (const channel of [1, 0, 2, 3]) out.write(reversedByte(rgba[at + channel] ?? 0), 8)
  }
  return out.bytes()
}

/** A lossless WebP, as RFC 9649 lays it out (sections 2 and 3). Simple rather than small: about 4 bytes a pixel. */
export const encodeWebp = (pixels: Pixels): Uint8Array => {
  const stream = losslessStream(pixels)
  const padded = stream.length + (stream.length % 2)
  const file = Buffer.alloc(20 + padded)
  file.write('RIFF', 0, 'latin1')
  file.writeUInt32LE(12 + padded, 4)
  file.write('WEBPVP8L', 8, 'latin1')
  file.writeUInt32LE(stream.length, 16)
  file.set(stream, 20)
  return new Uint8Array(file)
}
