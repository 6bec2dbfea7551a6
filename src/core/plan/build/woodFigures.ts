import type { Region, TablePoint } from '../../geometry'
import {
  acrossShrinkageFraction,
  conductivityWPerMK,
  equilibriumMoistureFraction,
  flattening,
  gravityAt,
  type HeightReading,
  movementMm,
  rippedReadings,
  slotLengthMm,
  type Species,
  speciesNamed,
} from '../../wood'
import { regionBounds } from '../../geometry'
import { pourWords } from '../text/en/pourWords'
import type { FlatteningFigures, PieceMovement, WoodFigures } from './buildResult'
import type { BuildTask } from './buildTask'

/** The kind of wood: the maker's own figures before the table's; null: neither. Rules: BLD-1. */
export function speciesOf({ species, wood }: BuildTask['slab']): Species | null {
  const known = species === null ? null : speciesNamed(species)
  if (wood.own === null) return known
  const own = (value: number) => ({ value, source: 'own' as const })
  const { gravity, radialFraction, tangentialFraction, volumetricFraction, elasticityGPa } = wood.own
  return {
    id: 'own',
    name: known?.name ?? species ?? '',
    latinName: known?.latinName ?? '',
    gravity: own(gravity),
    gravityBasis: 'dry',
    radialFraction: own(radialFraction),
    tangentialFraction: own(tangentialFraction),
    volumetricFraction: own(volumetricFraction),
    elasticityGPa: elasticityGPa === null ? null : own(elasticityGPa),
  }
}

interface WoodPiece {
  readonly name: string
  readonly regions: readonly Region<TablePoint>[]
  /** Direction of the grain in the table frame: the slab's datum. */
  readonly grainRad: number
}

/** The pieces of wood in the blank with the way that their grain runs. */
export function woodPieces({ option, coverage }: BuildTask): readonly WoodPiece[] {
  const pose = option.footprint?.pose
  const mainRad = pose === undefined ? 0 : pose.turnedOver ? pose.angleRad : -pose.angleRad
  const main = coverage.mainWood.map((region, index) => ({
    name: coverage.mainWood.length === 1 ? pourWords.slab : pourWords.slabPart(index + 1),
    regions: [region],
    grainRad: mainRad,
  }))
  const laid = coverage.placed.map(({ placementId, name, inBlank }) => ({
    name,
    regions: inBlank,
    grainRad: option.placements.find(({ id }) => id === placementId)?.pose.angleRad ?? 0,
  }))
  return [...main, ...laid].filter(({ regions }) => regions.length > 0)
}

/** Extent square to the grain, mm. */
function acrossMm({ regions, grainRad }: WoodPiece): number {
  const heights = regions.flatMap(({ outer }) =>
    outer.map(([x, y]) => y * Math.cos(grainRad) - x * Math.sin(grainRad)),
  )
  return Math.max(...heights) - Math.min(...heights)
}

/** How each piece moves from its reading to the client's room, and what a steel base must leave to it. Rules: BLD-1, BLD-2. */
export function woodFigures(task: BuildTask): WoodFigures {
  const { slab, option } = task
  const { roomC, dryHumidity, dampHumidity, screwMm } = option.room
  const species = speciesOf(slab)
  const dryFraction = equilibriumMoistureFraction(roomC, dryHumidity)
  const dampFraction = equilibriumMoistureFraction(roomC, dampHumidity)
  const now = slab.moistureFraction
  const common = {
    species,
    dryFraction,
    dampFraction,
    conductivityWPerMK:
      species === null
        ? null
        : conductivityWPerMK(gravityAt(species, Math.min(0.25, now ?? 0.1)), Math.min(0.25, now ?? 0.1)),
  }
  if (species === null) return { ...common, movements: [], slotMm: null }
  const shrinkage = acrossShrinkageFraction(species, slab.wood.sawn)
  const seasonPerMm = movementMm(1, dryFraction, dampFraction, shrinkage)
  const halfMm = task.footprint.finishedWidthMm / 2 - option.standing.base.insetWidthMm
  const movementOf = (piece: WoodPiece): PieceMovement => {
    const width = acrossMm(piece)
    const moved = (toFraction: number) => movementMm(width, now ?? 0, toFraction, shrinkage)
    const [toDryMm, toDampMm] = [moved(dryFraction), moved(dampFraction)]
    return { name: piece.name, acrossMm: width, toDryMm, toDampMm, seasonMm: toDampMm - toDryMm }
  }
  return {
    ...common,
    movements: now === null ? [] : woodPieces(task).map(movementOf),
    slotMm: halfMm > 0 ? slotLengthMm(halfMm, seasonPerMm, screwMm) : null,
  }
}

/** The thickest flat slab, whole and by the piece. Rules: BLD-3. */
export function flatteningFigures({ slab, option, pieces, shape }: BuildTask): FlatteningFigures {
  const { heights, passMm } = slab.wood
  const { thicknessMm } = option.table
  const readings = heights.flatMap((height): readonly HeightReading[] => {
    const thick = height.thicknessMm ?? slab.thicknessMm
    return thick === null ? [] : [{ ...height, thicknessMm: thick }]
  })
  const used = pieces.pieces.filter(({ use }) => use !== 'offcut')
  const onPiece = (region: (typeof used)[number]['region']): readonly HeightReading[] => {
    const { minX, minY, maxX, maxY } = regionBounds(region)
    const strip = rippedReadings(rippedReadings(readings, minY)[1], maxY)[0]
    // Readings stand at the slab's ends, beyond a piece that was crosscut: the nearest ones count too.
    const reachMm = shape.lengthMm / 4
    return strip.filter(({ xMm }) => xMm >= minX - reachMm && xMm <= maxX + reachMm)
  }
  return {
    whole: flattening(readings, passMm, thicknessMm),
    pieces: used.map(({ name, region }) => ({
      name: name === '' ? pourWords.slab : name,
      flattening: flattening(onPiece(region), passMm, thicknessMm),
    })),
  }
}
