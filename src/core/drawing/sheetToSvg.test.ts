import { describe, expect, it } from 'vitest'
import { paperSize } from './paperSize'
import type { DrawItem } from './sheet'
import { sheetToSvg } from './sheetToSvg'
import { textItem } from './textItems'

const svgOf = (items: readonly DrawItem[], title = 'Sheet'): string =>
  sheetToSvg({ title, paper: 'letter', orientation: 'landscape', ...paperSize('letter', 'landscape'), items })

describe('sheetToSvg', () => {
  it('DRW-11 is as large as the paper, one unit to the mm', () => {
    expect(svgOf([])).toContain('width="279.4mm" height="215.9mm" viewBox="0 0 279.4 215.9"')
  })

  it('DRW-11 writes coordinates to a thousandth of a mm, and never as -0 or with an exponent', () => {
    const svg = svgOf([
      {
        kind: 'polyline',
        points: [
          [-0.0001, 1e-7],
          [12.34567, 99.9996],
        ],
        stroke: { widthMm: 0.35 },
      },
    ])
    expect(svg).toContain('d="M0 0L12.346 100"')
  })

  it('DRW-11 lets no name be read as markup', () => {
    const evil = `<script>alert("1")</script> & 'x' ]]> \u0000`
    const svg = svgOf([textItem(evil, [10, 10], { sizeMm: 4 })], evil)
    expect(svg).not.toContain('<script')
    expect(svg).not.toContain('\u0000')
    const said = '&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &#39;x&#39; ]]&gt; '
    expect(svg).toContain(`>${said}</text>`)
    expect(svg).toContain(`<title>${said}</title>`)
  })

  it('DRW-11 draws every kind of item, in order', () => {
    const svg = svgOf([
      {
        kind: 'segments',
        segments: [
          [
            [1, 1],
            [2, 2],
          ],
          [
            [3, 3],
            [4, 4],
          ],
        ],
        stroke: { widthMm: 0.18, ink: 'grey' },
      },
      {
        kind: 'polygon',
        rings: [
          [
            [0, 0],
            [9, 0],
            [9, 9],
          ],
        ],
        stroke: null,
        fill: 'black',
      },
      { kind: 'circle', centre: [5, 5], radiusMm: 2, stroke: { widthMm: 0.5, dashMm: [2, 1] }, fill: null },
      textItem('turned', [50, 60], {
        sizeMm: 4,
        weight: 'bold',
        anchor: 'middle',
        angleRad: -Math.PI / 2,
        plate: true,
      }),
    ])
    const elements = [...svg.matchAll(/<(path|circle|text)\b/g)].map((match) => match[1])
    // The last path is the white ground of the text.
    expect(elements).toEqual(['path', 'path', 'circle', 'path', 'text'])
    expect(svg).toContain('d="M1 1L2 2M3 3L4 4" stroke="#777" stroke-width="0.18"')
    expect(svg).toContain('d="M0 0L9 0L9 9Z" fill="#000"')
    expect(svg).toContain('stroke-dasharray="2 1"')
    expect(svg).toContain('font-weight="600" text-anchor="middle" transform="rotate(-90 50 60)"')
  })
})
