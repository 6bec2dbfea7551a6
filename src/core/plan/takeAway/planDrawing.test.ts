// @vitest-environment happy-dom
import DxfParser from 'dxf-parser'
import { describe, expect, it } from 'vitest'
import { pointDistanceMm, ringAreaMm2, ringPerimeterMm, type Point } from '../../geometry'
import { layersToDxf, layersToSvg } from '../../drawing'
import { computePlan } from '../computePlan'
import { ANSWERS_ON_THE_SPOT } from '../pour/slowAnswers'
import { sheetText } from '../text/en/sheet'
import { MM, sheetPlan } from '../../../../tests/support/sheetPlan'
import { gatherTakeAway, planDrawing, type DrawingFrame, type TakeAwayInput } from './planDrawing'

const NAMES = ['outline', 'cuts', 'pieces', 'table', 'form']

function inputOf(job = sheetPlan()): TakeAwayInput {
  const result = computePlan(job.plan, ANSWERS_ON_THE_SPOT)
  const input = gatherTakeAway({ ...job, result, display: MM, dateText: '14 March 2026', text: sheetText })
  if (input === null) throw new Error('the plan is not worked out')
  return input
}

interface ReadEntity {
  readonly type: string
  readonly layer: string
  readonly vertices?: readonly { readonly x: number; readonly y: number }[]
  readonly text?: string
}

interface ReadDrawing {
  readonly entities: readonly ReadEntity[]
  readonly tables: { readonly layer: { readonly layers: Readonly<Record<string, unknown>> } }
}

/** The reader is a program of its own (dxf-parser). Its y is upwards; turned back here. */
function readDxf(text: string): ReadDrawing {
  const read = new DxfParser().parseSync(text)
  if (read === null) throw new Error('the reader found no drawing')
  return read as unknown as ReadDrawing
}

const pointsIn = ({ vertices = [] }: ReadEntity): readonly Point[] =>
  vertices.map(({ x, y }): Point => [x, -y])

const ringsOn = (read: ReadDrawing, layer: string): readonly (readonly Point[])[] =>
  read.entities.filter((entity) => entity.layer === layer && entity.type === 'POLYLINE').map(pointsIn)

/** Rings of a group of the SVG, read with the browser's own parser. */
function svgShapes(svg: string, layer: string): readonly (readonly Point[])[] {
  const page = new DOMParser().parseFromString(svg, 'image/svg+xml')
  return [...page.querySelectorAll(`g[id="${layer}"] > path`)].map((path) =>
    (path.getAttribute('d') ?? '')
      .replace(/[MZ]/g, '')
      .split('L')
      .map((pair): Point => {
        const [x, y] = pair.split(' ').map(Number)
        return [x ?? Number.NaN, y ?? Number.NaN]
      }),
  )
}

describe('planDrawing', () => {
  const input = inputOf()
  const { footprint, shape, pieces } = input

  it('TAK-1 DRW-13 gives DXF whose lengths and areas are the core’s within 0.01 mm, the right way up', () => {
    const read = readDxf(layersToDxf(planDrawing(input, 'slab')))
    const [outline, ...voids] = ringsOn(read, 'outline')
    expect(ringPerimeterMm(outline ?? [])).toBeCloseTo(ringPerimeterMm(shape.outline), 2)
    // A drawing that came out mirrored would have the other sign.
    expect(ringAreaMm2(outline ?? [])).toBeCloseTo(ringAreaMm2(shape.outline), 0)
    expect(voids).toHaveLength(1)
    const [table, blank] = ringsOn(read, 'table')
    // By hand: 1900 × 800 mm finished; 5 mm more on each side untrimmed.
    expect(ringPerimeterMm(table ?? [])).toBeCloseTo(2 * (1900 + 800), 2)
    expect(ringPerimeterMm(blank ?? [])).toBeCloseTo(2 * (1910 + 810), 2)
    const cuts = read.entities.filter(({ type, layer }) => type === 'LINE' && layer === 'cuts').map(pointsIn)
    expect(cuts).toHaveLength(pieces.cuts.length)
    cuts.forEach(([a, b], k) => {
      expect(pointDistanceMm(a ?? [0, 0], b ?? [0, 0])).toBeCloseTo(pieces.cuts[k]?.lengthMm ?? Number.NaN, 2)
    })
  })

  it('TAK-1 DRW-13 gives SVG in mm whose lengths are the core’s within 0.01 mm', () => {
    const svg = layersToSvg(planDrawing(input, 'slab'))
    expect(svg).toMatch(/width="[\d.]+mm" height="[\d.]+mm"/)
    const box = /width="([\d.]+)mm".*viewBox="\S+ \S+ ([\d.]+) /.exec(svg)
    expect(box?.[1]).toBe(box?.[2])
    const [outline] = svgShapes(svg, 'outline')
    expect(ringPerimeterMm(outline ?? [])).toBeCloseTo(ringPerimeterMm(shape.outline), 2)
    const [table] = svgShapes(svg, 'table')
    expect(ringPerimeterMm(table ?? [])).toBeCloseTo(ringPerimeterMm(footprint.finished), 2)
    expect(svgShapes(svg, 'cuts').map(([a, b]) => pointDistanceMm(a ?? [0, 0], b ?? [0, 0]))).toEqual(
      pieces.cuts.map(({ lengthMm }) => expect.closeTo(lengthMm, 2)),
    )
  })

  it.each<DrawingFrame>(['slab', 'table'])(
    'TAK-2 names its layers in the trade’s words, %s frame',
    (frame) => {
      const drawing = planDrawing(input, frame)
      expect(Object.keys(readDxf(layersToDxf(drawing)).tables.layer.layers)).toEqual(NAMES)
      expect([...layersToSvg(drawing).matchAll(/<g id="([^"]+)"/g)].map((match) => match[1])).toEqual(NAMES)
    },
  )

  it('TAK-1 lays the table’s corner at the origin in the table’s frame', () => {
    const [table] = ringsOn(readDxf(layersToDxf(planDrawing(input, 'table'))), 'table')
    const corners = (table ?? []).map(([x, y]) => [Math.round(x), Math.round(y)].join(' '))
    expect(corners.toSorted()).toEqual(['0 0', '0 800', '1900 0', '1900 800'])
  })

  it('TAK-3 DRW-13 lets no name break out of its text', () => {
    const name = 'Oak <b>&\r\n  0\r\nEOF\r\n"é木'
    const job = sheetPlan({ plan: { name } })
    const drawing = planDrawing(inputOf(job), 'slab')
    const layers = drawing.layers.map((layer) => ({
      ...layer,
      shapes: layer.shapes.map((item) => (item.kind === 'label' ? { ...item, text: name } : item)),
    }))
    const dxf = layersToDxf({ ...drawing, layers })
    // eslint would have a control sign named; the range is ASCII with its line ends.
    expect([...dxf].every((sign) => sign === '\r' || sign === '\n' || (sign >= ' ' && sign <= '~'))).toBe(
      true,
    )
    const texts = readDxf(dxf).entities.filter(({ type }) => type === 'TEXT')
    expect(texts.length).toBeGreaterThan(0)
    for (const { text } of texts) expect(text).toMatch(/^Oak <b>& 0 EOF "/)
    const page = new DOMParser().parseFromString(layersToSvg({ ...drawing, layers }), 'image/svg+xml')
    expect(page.querySelectorAll('b')).toHaveLength(0)
    expect(page.querySelector('title')?.textContent).toContain('<b>&')
  })
})
