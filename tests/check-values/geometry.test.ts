import { describe, expect, it } from 'vitest'
import type { Point, Ring } from '../../src/core/geometry'
import {
  interiorPoint,
  intersectRegions,
  offsetRegions,
  pointToRingDistanceMm,
  regionsAreaMm2,
  regionsFromRings,
  reverseRing,
  ringAreaMm2,
  ringCentroid,
  ringMoments,
  ringPerimeterMm,
  smallestRectangle,
  subtractRegions,
} from '../../src/core/geometry'
import rows from './geometry.json'

interface RowInput {
  readonly ring?: number[][]
  readonly regularPolygon?: { readonly corners: number; readonly radiusMm: number }
  readonly reversed?: boolean
  readonly turnedByRad?: number
  readonly other?: number[][]
  readonly deltaMm?: number
  readonly join?: string
}

interface Row {
  readonly id: string
  readonly measure: string
  readonly in: RowInput
  readonly expect: readonly number[]
  readonly unit: string
  readonly tolerance: number
  readonly source?: Readonly<Record<string, string>>
}

const asPoints = (pairs: readonly number[][]): Ring => pairs.map(([x = NaN, y = NaN]): Point => [x, y])

function ringOf({ ring, regularPolygon, reversed, turnedByRad = 0 }: RowInput): Ring {
  const { corners, radiusMm } = regularPolygon ?? { corners: 0, radiusMm: 0 }
  const regular = Array.from({ length: corners }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / corners
    return [radiusMm * Math.cos(angle), radiusMm * Math.sin(angle)]
  })
  const given = ring === undefined ? regular : asPoints(ring)
  const [cos, sin] = [Math.cos(turnedByRad), Math.sin(turnedByRad)]
  const turned = given.map(([x, y]): Point => [cos * x - sin * y, sin * x + cos * y])
  return reversed === true ? reverseRing(turned) : turned
}

const MEASURES: Readonly<Record<string, (input: RowInput) => readonly number[]>> = {
  area: (input) => [ringAreaMm2(ringOf(input))],
  perimeter: (input) => [ringPerimeterMm(ringOf(input))],
  centroid: (input) => ringCentroid(ringOf(input)),
  moments: (input) => {
    const { aboutXMm4, aboutYMm4, productMm4 } = ringMoments(ringOf(input))
    return [aboutXMm4, aboutYMm4, productMm4]
  },
  offset: (input) => {
    const join = input.join === 'mitre' ? 'mitre' : 'round'
    return [regionsAreaMm2(offsetRegions(regionsFromRings([ringOf(input)]), input.deltaMm ?? NaN, join))]
  },
  smallestRectangle: (input) => {
    const { lengthMm, widthMm } = smallestRectangle(ringOf(input))
    return [lengthMm * widthMm]
  },
  clearance: (input) => {
    const ring = ringOf(input)
    return [pointToRingDistanceMm(interiorPoint({ outer: ring, holes: [] }), ring)]
  },
  intersection: (input) => [regionsAreaMm2(intersectRegions(faceOf(input.ring), faceOf(input.other)))],
  difference: (input) => [regionsAreaMm2(subtractRegions(faceOf(input.ring), faceOf(input.other)))],
}

const faceOf = (pairs: readonly number[][] = []) => regionsFromRings([asPoints(pairs)])

/** What each kind of source must say. */
const SOURCE_FIELDS: Readonly<Record<string, string>> = {
  published: 'title',
  'by-hand': 'working',
  'independent-program': 'program',
}

function sourceProblem({ source }: Row): string | null {
  if (source === undefined) return 'no source'
  const field = SOURCE_FIELDS[source['kind'] ?? '']
  if (field === undefined) return 'unknown kind of source'
  return (source[field] ?? '') === '' ? `no ${field}` : null
}

function valueProblem({ measure, in: input, expect: expected, tolerance }: Row): string | null {
  const got = MEASURES[measure]?.(input)
  if (got === undefined) return `unknown measure ${measure}`
  const isNear =
    got.length === expected.length && got.every((v, i) => Math.abs(v - (expected[i] ?? NaN)) <= tolerance)
  return isNear ? null : `got ${got.join(', ')} instead of ${expected.join(', ')}`
}

describe('check values of plane geometry', () => {
  const table: readonly Row[] = rows as readonly Row[]

  it.each(table.map((row) => [row.id, row] as const))('%s', (_, row) => {
    expect(sourceProblem(row)).toBeNull()
    expect(valueProblem(row)).toBeNull()
  })

  it('ids are unique and every measure is used', () => {
    expect(new Set(table.map((row) => row.id)).size).toBe(table.length)
    expect([...new Set(table.map((row) => row.measure))].sort()).toEqual(Object.keys(MEASURES).sort())
  })

  it('sabotage: a row without source, with an empty one, or with a wrong figure is caught', () => {
    const [row] = table
    if (row === undefined) throw new Error('no rows')
    const { source: _, ...bare } = row
    expect(sourceProblem(bare)).toBe('no source')
    expect(sourceProblem({ ...row, source: { kind: 'by-hand', working: '' } })).toBe('no working')
    for (const each of table) {
      const moved = each.expect.map((value) => value + 2 * each.tolerance + 1e-9)
      expect(valueProblem({ ...each, expect: moved })).not.toBeNull()
    }
  })
})
