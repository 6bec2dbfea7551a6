import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { textWidthMm } from './textMetrics'
import { shortenText, wrapText } from './wrapText'

const SEED = 20260314
const text = fc.array(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 24 }), { maxLength: 30 })
const squeezed = (words: string): string => words.replace(/\s+/gu, '')

describe('wrapText', () => {
  it('DRW-3 breaks where the room ends', () => {
    // Figures are 0.497 em, a space 0.2 em: "11 11" is 2.188 em, at 10 mm 21.88 mm.
    expect(wrapText('11 11 11', { sizeMm: 10, maxWidthMm: 21.9 })).toEqual(['11 11', '11'])
    expect(wrapText('11 11 11', { sizeMm: 10, maxWidthMm: 21.8 })).toEqual(['11', '11', '11'])
  })

  it('DRW-3 breaks a word that is longer than a line, and keeps a figure with its unit', () => {
    expect(wrapText('11111', { sizeMm: 10, maxWidthMm: 10 })).toEqual(['11', '11', '1'])
    expect(wrapText('to 11\u00a0mm', { sizeMm: 10, maxWidthMm: 32 })).toEqual(['to', '11\u00a0mm'])
  })

  it(`DRW-3 loses nothing and keeps within its room, for any text (seed ${SEED})`, () => {
    fc.assert(
      fc.property(text, fc.double({ min: 5, max: 80, noNaN: true }), (words, maxWidthMm) => {
        const whole = words.join(' ')
        const lines = wrapText(whole, { sizeMm: 3.5, maxWidthMm })
        expect(squeezed(lines.join(''))).toBe(squeezed(whole))
        for (const line of lines) expect(textWidthMm(line, 3.5)).toBeLessThanOrEqual(maxWidthMm)
      }),
      { seed: SEED },
    )
  })
})

describe('shortenText', () => {
  it('DRW-3 leaves a text that fits, and ends a cut one in an ellipsis', () => {
    expect(shortenText('Library table', { sizeMm: 4, maxWidthMm: 60 })).toBe('Library table')
    const short = shortenText('Library table for a long room', { sizeMm: 4, maxWidthMm: 30 })
    expect(short).toMatch(/^Library .*…$/)
    expect(textWidthMm(short, 4)).toBeLessThanOrEqual(30)
  })
})
