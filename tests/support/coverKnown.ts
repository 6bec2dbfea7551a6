import { type Ring, slabPoint, type SlabPoint, type TablePoint } from '../../src/core/geometry'
import {
  bestPose,
  finishedRing,
  type GrainLimit,
  largestShape,
  largestTable,
  NO_WISHES,
  searchWood,
  type SearchWood,
} from '../../src/core/layout'
import rows from '../check-values/layout.json'

interface KnownInput {
  readonly wood: string
  readonly sizeMm: readonly number[]
  readonly corners?: number
  readonly turnedByRad: number
  readonly widthMm?: number
  readonly tableMm?: readonly number[]
  readonly outline?: string
  readonly outlineMm?: number
  readonly grain?: readonly number[]
}

/** A known answer and how it was had. */
export interface KnownAnswer {
  readonly id: string
  readonly measure: string
  readonly in: KnownInput
  readonly expect: number
  readonly unit: string
  readonly tolerance: number
  readonly source?: { readonly kind?: string; readonly working?: string }
}

const SHAPES: Readonly<Record<string, (input: KnownInput) => readonly (readonly [number, number])[]>> = {
  rectangle: ({ sizeMm: [a = 0, b = 0] }) => [
    [0, 0],
    [a, 0],
    [a, b],
    [0, b],
  ],
  triangle: ({ sizeMm: [a = 0, b = 0] }) => [
    [0, 0],
    [a, 0],
    [0, b],
  ],
  disc: ({ sizeMm: [radius = 0], corners = 0 }) =>
    Array.from({ length: corners }, (_, i) => {
      const turn = (2 * Math.PI * i) / corners
      return [radius * Math.cos(turn), radius * Math.sin(turn)] as const
    }),
}

function woodOf(input: KnownInput): SearchWood {
  const [cos, sin] = [Math.cos(input.turnedByRad), Math.sin(input.turnedByRad)]
  const outer: Ring<SlabPoint> = (SHAPES[input.wood]?.(input) ?? []).map(([x, y]) =>
    slabPoint(1200 + cos * x - sin * y, -700 + sin * x + cos * y),
  )
  const wood = searchWood([{ outer, holes: [] }])
  if (!wood.ok) throw new Error(`${input.wood}: ${wood.problem.code}`)
  return wood.value
}

function outlineOf({ outline, outlineMm = 0 }: KnownInput): Ring<TablePoint> {
  const size = { lengthMm: outlineMm, widthMm: outlineMm }
  return finishedRing(outline === 'disc' ? { kind: 'oval', ...size } : { kind: 'rectangle', ...size })
}

const grainOf = ({ grain }: KnownInput): GrainLimit | null =>
  grain === undefined ? null : { directionRad: grain[0] ?? 0, withinRad: grain[1] ?? 0 }

const grown = (input: KnownInput, outline: Ring<TablePoint>, growth: 'factor' | 'margin'): number => {
  const tolerance = growth === 'factor' ? 0.001 : 0.5
  const search = largestShape({ wood: woodOf(input), outline, growth, grain: null, tolerance })
  if (!search.ok) throw new Error(search.problem.code)
  return search.value.step(150_000).value
}

/** What each kind of known answer measures. */
const COVER_MEASURES: Readonly<Record<string, (input: KnownInput) => number>> = {
  longest: (input) =>
    largestTable({
      wood: woodOf(input),
      widthMm: input.widthMm ?? 0,
      resinShare: 0,
      grain: grainOf(input),
      toleranceMm: 2,
    }).step(Infinity).value,
  woodAtBest: (input) => {
    const [lengthMm = 0, widthMm = 0] = input.tableMm ?? []
    const task = { wood: woodOf(input), lengthMm, widthMm, wishes: NO_WISHES, toleranceShare: 0.01 }
    return bestPose(task).step(20_000).incumbent?.woodMm2 ?? 0
  },
  factor: (input) => grown(input, outlineOf(input), 'factor'),
  margin: (input) => {
    const [lengthMm = 0, widthMm = 0] = input.tableMm ?? []
    return grown(input, finishedRing({ kind: 'rectangle', lengthMm, widthMm }), 'margin')
  },
}

export const KNOWN_ANSWERS: readonly KnownAnswer[] = rows

export const knownValue = ({ measure, in: input }: KnownAnswer): number =>
  COVER_MEASURES[measure]?.(input) ?? Number.NaN

export const isNear = (row: KnownAnswer, value = knownValue(row)): boolean =>
  Math.abs(value - row.expect) <= row.tolerance
