import { describe, expect, it } from 'vitest'
import { gapBetween, type PourGap } from './gapVolume'
import { layerGaps } from './layerGaps'

const gap = (
  name: string,
  kind: PourGap['kind'],
  heights: readonly [number, number],
  areas: readonly [number, number],
  widths: readonly [narrowest: number, widest: number],
): PourGap =>
  gapBetween(
    name,
    kind,
    { heightMm: heights[0], areaMm2: areas[0], narrowestMm: widths[0], widestMm: widths[1] },
    { heightMm: heights[1], areaMm2: areas[1], narrowestMm: widths[0], widestMm: widths[1] },
  )

const river = gap('river', 'joint', [0, 60], [300_000, 300_000], [150, 240])
const edge = gap('edge', 'edge', [0, 60], [50_000, 60_000], [20, 50])
const knot = gap('knot', 'void', [45, 60], [2_000, 2_000], [5, 400])
const film = gap('film', 'clearance', [0, 60], [9_000, 9_000], [3, 3])

describe('layerGaps', () => {
  it('RES-17 the widest gap is the hottest and the narrowest the slowest', () => {
    expect(layerGaps([river, edge], 0, 30, 1)).toMatchObject({
      widestName: 'river',
      widestMm: 240,
      narrowestName: 'edge',
      narrowestMm: 20,
      hotDepthMm: 30,
      slowDepthMm: 30,
    })
  })

  it('RES-17 a shallow hollow and the film beside the wood do not rule the layer, but take resin', () => {
    const found = layerGaps([river, edge, knot, film], 0, 60, 1)
    expect(found).toMatchObject({ widestName: 'river', narrowestName: 'edge' })
    expect(found.gapLitres).toBeCloseTo(18 + 3.3 + 0.03 + 0.54, 9)
  })

  it('RES-17 a gap wider below counts as deep as its volume over its top, and that is said', () => {
    const under = gap('undercut', 'edge', [0, 40], [120_000, 60_000], [30, 80])
    const found = layerGaps([under], 0, 40, 2)
    expect(found.hotDepthMm).toBeCloseTo((40 * 90_000) / 60_000, 9)
    expect(found.notices).toMatchObject([
      { code: 'gap-wider-below', values: { gapName: 'undercut', layer: 2, depthMm: 40, countsAsMm: 60 } },
    ])
  })

  it('RES-17 a gap that narrows downward is as deep as it is', () => {
    const found = layerGaps([gap('lean', 'edge', [0, 40], [60_000, 120_000], [30, 80])], 0, 40, 1)
    expect(found).toMatchObject({ hotDepthMm: 40, notices: [] })
  })

  it('RES-13 layers share out the whole', () => {
    const all = [river, edge, knot]
    const sum = [0, 20, 40].reduce((litres, from) => litres + layerGaps(all, from, from + 20, 1).gapLitres, 0)
    expect(sum).toBeCloseTo(layerGaps(all, 0, 60, 1).gapLitres, 9)
  })

  it('RES-17 a layer that no gap reaches is empty', () => {
    expect(layerGaps([knot], 0, 20, 1)).toMatchObject({ gapLitres: 0, hotDepthMm: 20, widestMm: 20 })
  })
})
