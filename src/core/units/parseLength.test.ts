import { describe, expect, it } from 'vitest'
import type { LengthDisplay } from './lengthDisplay'
import { parseLength, parseLengthWithin, parseSignedLength } from './parseLength'

const MM: LengthDisplay = { system: 'mm' }
const INCH: LengthDisplay = { system: 'inch', fraction: 16 }

const valueOf = (text: string, display: LengthDisplay): number => {
  const length = parseLength(text, display)
  if (!length.ok) throw new Error(`${text}: ${length.problem.code}`)
  return length.value
}
const codeOf = (text: string, display: LengthDisplay = MM): string => {
  const length = parseLength(text, display)
  return length.ok ? `read as ${length.value}` : length.problem.code
}

describe('parseLength', () => {
  // Expected inches are written out by hand; 25.4 mm to the inch exactly.
  const INCHES: readonly (readonly [text: string, inches: number])[] = [
    [`7' 2 1/2"`, 86.5],
    ['7ft 2-1/2in', 86.5],
    ['7 ft. 2 1/2 in.', 86.5],
    ['7 feet 2.5 inches', 86.5],
    [`7'2"`, 86],
    [`7'-2 1/2"`, 86.5],
    [`7' - 2-1/2"`, 86.5],
    [`7' 2 1/2`, 86.5],
    ['7′ 2 1/2″', 86.5],
    ['7’ 2 1/2”', 86.5],
    [`7' 2 1/2''`, 86.5],
    ['7′ 2½″', 86.5],
    [`7' 1/2"`, 84.5],
    [`86-1/2"`, 86.5],
    ['86 1/2 in', 86.5],
    [`35 3/8"`, 35.375],
    ['35⅜"', 35.375],
    ['35 3⁄8″', 35.375],
    ['35 3 / 8"', 35.375],
    [`⅞"`, 0.875],
    [`5'`, 60],
    [`5 1/2'`, 66],
    ['5.5 ft', 66],
    [`.5"`, 0.5],
    [`,5"`, 0.5],
    [`9/8"`, 1.125],
    ['  86 1/2"  ', 86.5],
    ['86\u00a01/2\u202f"', 86.5],
    ['1 FOOT', 12],
    ['+3"', 3],
  ]
  it.each(INCHES)('UNI-4 reads %s as %f inches, whatever the display', (text, inches) => {
    expect(valueOf(text, MM)).toBeCloseTo(inches * 25.4, 9)
    expect(valueOf(text, INCH)).toBeCloseTo(inches * 25.4, 9)
  })

  const METRIC: readonly (readonly [text: string, mm: number])[] = [
    ['2.2 m', 2200],
    ['2,2 m', 2200],
    ['2.2m', 2200],
    ['2200mm', 2200],
    ['2 200 mm', 2200],
    ['220 cm', 2200],
    ['2 metres', 2000],
    ['2 Meters', 2000],
    ['1.200 m', 1200],
    ['0,5 mm', 0.5],
    ['1/2 mm', 0.5],
  ]
  it.each(METRIC)('UNI-4 reads %s as %f mm, whatever the display', (text, mm) => {
    expect(valueOf(text, MM)).toBeCloseTo(mm, 9)
    expect(valueOf(text, INCH)).toBeCloseTo(mm, 9)
  })

  it('UNI-5 takes the unit of the display for a bare number', () => {
    expect(valueOf('2200', MM)).toBe(2200)
    expect(valueOf('2 200', MM)).toBe(2200)
    expect(valueOf('86 1/2', INCH)).toBeCloseTo(2197.1, 9)
    expect(valueOf('86 1/2', MM)).toBe(86.5)
    expect(valueOf('35⅜', INCH)).toBeCloseTo(898.525, 9)
    expect(valueOf('2 200/201', MM)).toBeCloseTo(2 + 200 / 201, 12)
  })

  it('UNI-6 refuses a comma before exactly three digits and takes every dot as the decimal sign', () => {
    expect(codeOf('1,200')).toBe('length-ambiguous-comma')
    expect(codeOf('1,200 mm')).toBe('length-ambiguous-comma')
    expect(codeOf('1,200.5')).toBe('length-ambiguous-comma')
    expect(codeOf('1,200,300')).toBe('length-ambiguous-comma')
    expect(valueOf('1.200', MM)).toBe(1.2)
    expect(valueOf('1,20', MM)).toBe(1.2)
    expect(valueOf('1,2000', MM)).toBe(1.2)
    expect(valueOf(',200', MM)).toBe(0.2)
  })

  const REFUSED: readonly (readonly [text: string, code: string])[] = [
    ['', 'length-empty'],
    [' \u00a0 ', 'length-empty'],
    ['wide', 'length-not-understood'],
    ['12 bananas', 'length-not-understood'],
    ['1e5', 'length-not-understood'],
    ['NaN', 'length-not-understood'],
    ['--5', 'length-not-understood'],
    ['1.2.3', 'length-not-understood'],
    ['3.5 1/2"', 'length-not-understood'],
    ['86 - 1/2"', 'length-not-understood'],
    [`7.5' 3"`, 'length-not-understood'],
    [`2" 7'`, 'length-not-understood'],
    [`7' 7'`, 'length-not-understood'],
    ['7ft.5in', 'length-not-understood'],
    ['7 2 1/2', 'length-not-understood'],
    ['1/', 'length-not-understood'],
    ['.', 'length-not-understood'],
    ['mm', 'length-not-understood'],
    [`'`, 'length-not-understood'],
    ['9'.repeat(400), 'length-not-understood'],
    ['-5', 'length-negative'],
    ['−5 mm', 'length-negative'],
    [`-7' 2"`, 'length-negative'],
    ['1/0', 'length-zero-denominator'],
    ['86 1/0"', 'length-zero-denominator'],
    [`7' 2 1/0"`, 'length-zero-denominator'],
    ['2 m 3"', 'length-mixed-units'],
    [`7' 20 mm`, 'length-mixed-units'],
    ['2 m 20 cm', 'length-mixed-units'],
  ]
  it.each(REFUSED)('UNI-7 refuses %s with %s', (text, code) => {
    expect(codeOf(text)).toBe(code)
    expect(codeOf(text, INCH)).toBe(code)
  })

  it('UNI-7 gives the typed text, without its outer spaces, with every problem but the empty one', () => {
    expect(parseLength(' wide ', MM)).toEqual({
      ok: false,
      problem: { code: 'length-not-understood', values: { text: 'wide' } },
    })
    expect(parseLength('', MM)).toEqual({ ok: false, problem: { code: 'length-empty', values: {} } })
  })

  it('UNI-7 refuses long wrong texts at once: a pattern that backtracks would not end', () => {
    for (const start of [
      '1'.repeat(58),
      `1'`.repeat(29),
      '1 '.repeat(29),
      '1/'.repeat(29),
      '1 1/1'.repeat(11),
    ]) {
      expect(codeOf(`${start}x`)).toBe('length-not-understood')
    }
    expect(codeOf('x'.repeat(1_000_000))).toBe('length-not-understood')
  })

  it('UNI-7 reads zero as zero, with or without a minus', () => {
    expect(Object.is(valueOf('0', MM), 0)).toBe(true)
    expect(Object.is(valueOf('-0', MM), 0)).toBe(true)
  })
})

describe('parseLengthWithin', () => {
  const limits = { leastMm: 25.4, greatestMm: 254 }
  it('UNI-7 allows both limits and names them when they are passed', () => {
    expect(parseLengthWithin('1"', MM, limits)).toEqual({ ok: true, value: 25.4 })
    expect(parseLengthWithin('10"', MM, limits)).toEqual({ ok: true, value: 254 })
    expect(parseLengthWithin('25.3', MM, limits)).toEqual({
      ok: false,
      problem: { code: 'length-too-small', values: { text: '25.3', valueMm: 25.3, ...limits } },
    })
    expect(parseLengthWithin('255', MM, limits)).toMatchObject({ problem: { code: 'length-too-large' } })
    expect(parseLengthWithin('-1', MM, limits)).toMatchObject({ problem: { code: 'length-negative' } })
  })
  it('UNI-7 reads negative lengths when the least is negative', () => {
    expect(parseLengthWithin('−5', MM, { leastMm: -10, greatestMm: 10 })).toEqual({ ok: true, value: -5 })
    expect(parseSignedLength('- 2 1/2"', MM)).toEqual({ ok: true, value: -63.5 })
  })
})
