import { describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatSlab } from '../../../tests/support/flatPlan'
import { regionAreaMm2, regionBounds, regionsDistanceMm } from '../../core/geometry'
import { computePlan } from '../../core/plan'
import { layTray } from './tray'

const pose = { xMm: 0, yMm: 100, angleRad: 0.05, turnedOver: false }
const plan = flatPlan(flatSlab({ outline: flatBox(-400, -150, 2300, 1000) }), {
  ...flatOption(1800, 700, pose),
  footprint: { slabId: 'slab', pose },
})

function parts() {
  const option = computePlan(plan).options.get('option')
  if (option?.pieces.state !== 'ready' || option.footprint.state !== 'ready') throw new Error('no pieces')
  return { pieces: option.pieces.value.pieces, blank: option.footprint.value.blank }
}

describe('layTray', () => {
  const { pieces, blank } = parts()
  const tray = layTray(pieces, blank, pose)

  it('holds every offcut, largest first, and not the table’s own wood', () => {
    const offcuts = pieces.filter(({ use }) => use === 'offcut')
    expect(offcuts.length).toBeGreaterThanOrEqual(4)
    expect(tray.map(({ piece }) => piece.key).toSorted()).toEqual(offcuts.map(({ key }) => key).toSorted())
    const areas = tray.map(({ piece }) => piece.areaMm2)
    expect(areas).toEqual(areas.toSorted((a, b) => b - a))
  })

  it('is true to scale', () => {
    for (const { piece, region } of tray) {
      expect(regionAreaMm2(region)).toBeCloseTo(regionAreaMm2(piece.region), 3)
    }
  })

  it('lies below the table, and no piece on another', () => {
    const regions = tray.map(({ region }) => region)
    regions.forEach((region, i) => {
      expect(regionBounds(region).minY).toBeGreaterThan(700)
      for (const other of regions.slice(i + 1))
        expect(regionsDistanceMm([region], [other])).toBeGreaterThan(10)
    })
  })

  it('lays pieces that stand on their side', () => {
    for (const { region } of tray) {
      const { minX, minY, maxX, maxY } = regionBounds(region)
      expect(maxX - minX).toBeGreaterThanOrEqual(maxY - minY)
    }
  })
})
