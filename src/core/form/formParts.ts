import type { TableSide } from '../layout'
import { sidePressurePa, sideThrustNPerM } from '../resin'
import { type BasePanels, baseJoints } from './baseJoints'
import type { SheetPart } from './cuttingPlan'

/** Sides of the form above the cast. Common practice, no source. */
export const USUAL_SIDE_ABOVE_MM = 25
/** Base beyond its sides, where the screws of the sides come up and clamps hold. Common practice, no source. */
export const USUAL_BASE_BEYOND_MM = 40
/** Board under a joint, half on either side. Common practice, no source. */
export const USUAL_BACKING_MM = 150
export const USUAL_SCREW_EVERY_MM = 150
/** Foil on the floor beyond the base. Common practice, no source. */
const DRIP_BEYOND_MM = 300
/** Plate under a void beyond its edge. Common practice, no source. */
const PLATE_BEYOND_MM = 50

export interface FormRequest {
  /** Inside, along and across: the blank with its clearance. */
  readonly innerLengthMm: number
  readonly innerWidthMm: number
  /** Sides on which a strip stands; a live edge and a side of wood from end to end have none. */
  readonly stripSides: readonly TableSide[]
  readonly castMm: number
  readonly aboveMm: number
  readonly boardMm: number
  readonly beyondMm: number
  readonly backingMm: number
  readonly screwEveryMm: number
  readonly sheet: readonly [longMm: number, shortMm: number]
  /** Resin across the form at a distance from its inner start. */
  readonly wetAtMm: (innerAtMm: number) => number
  readonly resinKgPerM3: number
}

export type FormPartKind = 'base' | 'side' | 'backing' | 'plate'

export interface FormPart extends SheetPart {
  readonly kind: FormPartKind
  /** Side of the form; null for the base, its backing and plates. */
  readonly side: TableSide | null
}

export interface SideLoad {
  readonly pressurePa: number
  /** On each metre of side, at a third of the depth. */
  readonly thrustNPerM: number
  readonly pullPerScrewN: number
}

export interface FormPlan {
  readonly parts: readonly FormPart[]
  readonly sideHeightMm: number
  readonly baseLengthMm: number
  readonly baseWidthMm: number
  readonly base: BasePanels
  /** Joints in strips that are longer than any sheet, distances from the strip's start. */
  readonly stripJointsMm: Readonly<Partial<Record<TableSide, readonly number[]>>>
  readonly caulkMm: number
  /** Tape over the joints of the base. */
  readonly jointTapeMm: number
  readonly releaseAreaMm2: number
  readonly screws: number
  readonly dripSheetAreaMm2: number
  readonly load: SideLoad
}

const isLong = (side: TableSide): boolean => side === 'far' || side === 'near'

/**
 * The form as parts of sheet: base with its joints, sides that stand on it, backing.
 * @returns parts in mm before they are laid on sheets; names are made by the caller (`name` is the kind and a number)
 * Method: the long sides run past the ends of the short ones (corner overlap = thickness of the board). Resin's push:
 * ρ·g·h and ρ·g·h²/2 (core/resin). A strip that stands on the base turns about its outer foot: pull on a screw =
 * thrust · depth/3 · spacing / (board/2).
 * @throws InvariantError when a size is not above zero
 * Rules: FORM-1, FORM-2, FORM-3, FORM-4.
 */
export function formParts(request: FormRequest): FormPlan {
  const { innerLengthMm, innerWidthMm, stripSides, boardMm, beyondMm } = request
  const has = (side: TableSide): boolean => stripSides.includes(side)
  const thick = (side: TableSide): number => (has(side) ? boardMm : 0)
  const baseLengthMm = innerLengthMm + thick('start') + thick('end') + 2 * beyondMm
  const baseWidthMm = innerWidthMm + thick('far') + thick('near') + 2 * beyondMm
  const startMm = thick('start') + beyondMm
  const base = baseJoints({
    lengthMm: baseLengthMm,
    widthMm: baseWidthMm,
    sheet: request.sheet,
    wetAtMm: (atMm) => request.wetAtMm(atMm - startMm),
  })
  const sideHeightMm = request.castMm + request.aboveMm
  const lengthOf = (side: TableSide): number =>
    isLong(side) ? innerLengthMm + thick('start') + thick('end') : innerWidthMm
  const strips = stripSides.map((side) => stripOf(side, lengthOf(side), sideHeightMm, request))
  const corners = cornersOf(stripSides)
  const innerStripMm = stripSides.reduce(
    (sum, side) => sum + (isLong(side) ? innerLengthMm : innerWidthMm),
    0,
  )
  const jointMm = base.jointsMm.length * innerWidthMm + base.lengthwiseMm.length * innerLengthMm
  return {
    parts: [...baseParts(baseLengthMm, baseWidthMm, base, request), ...strips.flatMap(({ parts }) => parts)],
    sideHeightMm,
    baseLengthMm,
    baseWidthMm,
    base,
    stripJointsMm: Object.fromEntries(
      strips.filter(({ jointsMm }) => jointsMm.length > 0).map(({ side, jointsMm }) => [side, jointsMm]),
    ),
    caulkMm: innerStripMm + corners * sideHeightMm + jointMm,
    jointTapeMm: jointMm,
    releaseAreaMm2: innerLengthMm * innerWidthMm + innerStripMm * sideHeightMm,
    screws: screwsOf(
      strips.map(({ lengthMm }) => lengthMm),
      corners,
      base,
      request,
    ),
    dripSheetAreaMm2: (baseLengthMm + 2 * DRIP_BEYOND_MM) * (baseWidthMm + 2 * DRIP_BEYOND_MM),
    load: sideLoad(request),
  }
}

const CORNERS: readonly (readonly [TableSide, TableSide])[] = [
  ['start', 'far'],
  ['start', 'near'],
  ['end', 'far'],
  ['end', 'near'],
]

const cornersOf = (sides: readonly TableSide[]): number =>
  CORNERS.filter(([one, other]) => sides.includes(one) && sides.includes(other)).length

function sideLoad({ castMm, resinKgPerM3, screwEveryMm, boardMm }: FormRequest): SideLoad {
  const thrustNPerM = sideThrustNPerM(castMm, resinKgPerM3)
  return {
    pressurePa: sidePressurePa(castMm, resinKgPerM3),
    thrustNPerM,
    pullPerScrewN: (thrustNPerM * (castMm / 3) * (screwEveryMm / 1000)) / (boardMm / 2),
  }
}

/** Panels between joints, edges first and last. */
const spansOf = (sizeMm: number, jointsMm: readonly number[]): readonly number[] =>
  [...jointsMm, sizeMm].map((atMm, index) => atMm - (jointsMm[index - 1] ?? 0))

function baseParts(
  lengthMm: number,
  widthMm: number,
  { jointsMm, lengthwiseMm }: BasePanels,
  { backingMm }: FormRequest,
): readonly FormPart[] {
  const panels = spansOf(lengthMm, jointsMm).flatMap((along) =>
    spansOf(widthMm, lengthwiseMm).map((across) => ({ lengthMm: along, widthMm: across })),
  )
  const backing = [
    ...jointsMm.flatMap(() => spansOf(widthMm, lengthwiseMm)),
    ...lengthwiseMm.flatMap(() => spansOf(lengthMm, jointsMm)),
  ].map((backedMm) => ({ lengthMm: backedMm, widthMm: backingMm }))
  return [
    ...panels.map((size, index) => ({
      ...size,
      kind: 'base' as const,
      side: null,
      name: `base ${index + 1}`,
    })),
    ...backing.map((size, index) => ({
      ...size,
      kind: 'backing' as const,
      side: null,
      name: `backing ${index + 1}`,
    })),
  ]
}

interface Strip {
  readonly side: TableSide
  readonly lengthMm: number
  readonly jointsMm: readonly number[]
  readonly parts: readonly FormPart[]
}

function stripOf(side: TableSide, lengthMm: number, heightMm: number, request: FormRequest): Strip {
  const pieces = Math.ceil(lengthMm / request.sheet[0] - 1e-9)
  const jointsMm = Array.from({ length: pieces - 1 }, (_, at) => (lengthMm * (at + 1)) / pieces)
  const strip = (partMm: number, kind: FormPartKind): FormPart => ({
    kind,
    side,
    name: `${kind} ${side}`,
    lengthMm: partMm,
    widthMm: heightMm,
  })
  return {
    side,
    lengthMm,
    jointsMm,
    parts: [
      ...spansOf(lengthMm, jointsMm).map((partMm) => strip(partMm, 'side')),
      ...jointsMm.map(() => strip(request.backingMm, 'backing')),
    ],
  }
}

/** Along every strip, two in each corner, a row on either side of each joint of the base. */
function screwsOf(
  stripsMm: readonly number[],
  corners: number,
  { jointsMm, lengthwiseMm }: BasePanels,
  { screwEveryMm, innerWidthMm, innerLengthMm }: FormRequest,
): number {
  const row = (lengthMm: number): number => Math.ceil(lengthMm / screwEveryMm) + 1
  const along = stripsMm.reduce((sum, lengthMm) => sum + row(lengthMm), 0)
  const joints = 2 * (jointsMm.length * row(innerWidthMm) + lengthwiseMm.length * row(innerLengthMm))
  return along + 2 * corners + joints
}

export interface VoidToDam {
  readonly name: string
  readonly lengthMm: number
  readonly widthMm: number
  readonly edgeMm: number
}

/**
 * Where no strip stands at all: a plate under each hole that goes through, and a dam of caulk round it.
 * @returns plates as parts, and the length of caulk for the dams, under and above
 * Rules: FORM-8.
 */
export function voidDams(voids: readonly VoidToDam[]): {
  readonly parts: readonly FormPart[]
  readonly caulkMm: number
} {
  return {
    parts: voids.map(({ name, lengthMm, widthMm }) => ({
      kind: 'plate',
      side: null,
      name,
      lengthMm: lengthMm + 2 * PLATE_BEYOND_MM,
      widthMm: widthMm + 2 * PLATE_BEYOND_MM,
    })),
    caulkMm: voids.reduce((sum, { edgeMm }) => sum + 2 * edgeMm, 0),
  }
}
