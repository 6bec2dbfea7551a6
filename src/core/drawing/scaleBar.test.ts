import { describe, expect, it } from 'vitest'
import { paperSize } from './paperSize'
import { scaleBar } from './scaleBar'
import { sheetToSvg } from './sheetToSvg'

/** Longest level run of the bar's fields, read back from the SVG, in the user units that are mm there. */
function barInSvg(system: 'mm' | 'inch'): number {
  const items = scaleBar({ at: [20, 30], system, endTexts: ['0', 'end'], sizeMm: 3 })
  const svg = sheetToSvg({ title: 'Bar', paper: 'a4', orientation: 'portrait', ...paperSize('a4'), items })
  expect(svg).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"')
  const paths = [...svg.matchAll(/ d="([^"]*)"/g)].map((match) => match[1] ?? '')
  const places = paths.flatMap((d) =>
    [...d.matchAll(/[ML]([\d.]+) [\d.]+/g)].map((match) => Number(match[1])),
  )
  return Math.max(...places) - Math.min(...places)
}

describe('scaleBar', () => {
  it('DRW-10 is 100 mm long on paper, 283.464567 PDF points', () => {
    expect(barInSvg('mm')).toBeCloseTo(100, 6)
    // 100 mm / 25.4 × 72 (points of 1/72 in, ISO 32000-1).
    expect((barInSvg('mm') / 25.4) * 72).toBeCloseTo(283.464567, 6)
  })

  it('DRW-10 is 4 in long on paper for inches: 101.6 mm', () => {
    expect(barInSvg('inch')).toBeCloseTo(4 * 25.4, 6)
  })
})
