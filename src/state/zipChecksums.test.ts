import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { crc32, statedChecksums } from './zipChecksums'

describe('crc32', () => {
  it('gives the published check value of CRC-32 for "123456789"', () => {
    // "check" of CRC-32/ISO-HDLC in the Catalogue of parametrised CRC algorithms (Greg Cook); from memory.
    expect(crc32(strToU8('123456789'))).toBe(0xcbf43926)
    expect(crc32(new Uint8Array())).toBe(0)
  })
})

describe('statedChecksums', () => {
  it('reads what another packer wrote of each entry', () => {
    const texts = { 'a.txt': 'hello', 'dir/b.txt': 'other text' }
    const zip = zipSync(
      Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, strToU8(text)])),
    )
    const stated = statedChecksums(zip)
    for (const [name, text] of Object.entries(texts)) expect(stated.get(name)).toBe(crc32(strToU8(text)))
  })

  it('finds nothing in what is no zip', () => {
    expect(statedChecksums(new Uint8Array(10)).size).toBe(0)
    expect(statedChecksums(new Uint8Array(100)).size).toBe(0)
  })
})
