import { describe, expect, it } from 'vitest'
import { toolScene } from '../../../tests/support/toolScene'
import { handlesOf, pieceLabel } from './handles'

const ids = (scene: Parameters<typeof handlesOf>[0]) => handlesOf(scene).map(({ id }) => id)

describe('handlesOf', () => {
  it('gives every mark its place on screen and its pixel to drag', () => {
    const mark = handlesOf(toolScene()).find(({ id }) => id === 'mark/b')
    expect(mark).toMatchObject({
      kind: 'mark',
      label: 'Mark B',
      screen: [575, 125],
      selection: { kind: 'mark', markId: 'b' },
      grab: { kind: 'point', target: { kind: 'mark', markId: 'b' }, at: [2300, 500] },
    })
  })

  it('opens the points of a trace for its own tool, or when it is selected', () => {
    const point = 'trace/outline/0'
    expect(ids(toolScene())).not.toContain(point)
    expect(ids(toolScene({ tool: 'outline' }))).toContain(point)
    expect(ids(toolScene({ tool: 'void' }))).not.toContain(point)
    expect(ids(toolScene({ selection: { kind: 'trace', traceId: 'outline', point: 2 } }))).toContain(point)
  })

  it('leaves the table and its cuts out of the photo while someone marks or traces', () => {
    expect(ids(toolScene())).toContain('footprint')
    expect(ids(toolScene({ tool: 'mark' }))).not.toContain('footprint')
    expect(ids(toolScene({ tool: 'outline' })).some((id) => id.startsWith('cut/'))).toBe(false)
  })

  it('shows the turn handle only for what is selected or in hand', () => {
    expect(ids(toolScene({ view: 'above' }))).not.toContain('turn')
    expect(ids(toolScene({ view: 'above', tool: 'footprint' }))).toContain('turn')
    expect(ids(toolScene({ view: 'above', selection: { kind: 'footprint' } }))).toContain('turn')
  })

  it('puts cuts and pieces where the core says, from above', () => {
    const camera = { scale: 0.25, x: 100, y: 100 }
    const handles = handlesOf(toolScene({ view: 'above', camera }))
    const footprint = handles.find(({ id }) => id === 'footprint')
    // by hand: the table's middle is (900, 300) mm
    expect(footprint?.screen).toEqual([325, 175])
    const cuts = handles.filter(({ kind }) => kind === 'cut')
    expect(cuts.map(({ label }) => label)).toEqual(['Cut 1', 'Cut 2', 'Cut 3', 'Cut 4'])
  })

  it('calls a piece with a bare letter an offcut: marks have letters too', () => {
    expect(pieceLabel('A')).toBe('Offcut A')
    expect(pieceLabel('Shelf')).toBe('Shelf')
  })
})
