import {
  applyIsometryToRegion,
  applyIsometryToRing,
  invertIsometry,
  regionsAreaMm2,
  tablePoint,
} from '../geometry'
import { coverageOf, gapAreaMm2, type LaidPiece, type SideChoices } from '../layout'
import { type Issue, issueOf } from './issue'
import { pieceById } from './namedPieces'
import { type Found, ready } from './part'
import type { SlabShapeResult } from './planResult'
import type { CoverageResult, FootprintResult, PiecesResult } from './tableResult'
import type { Option } from './schema'

export interface OptionCoverageInput {
  readonly optionId: string
  readonly sides: SideChoices
  readonly placements: Option['placements']
  readonly footprint: FootprintResult
  readonly pose: NonNullable<Option['footprint']>['pose']
  readonly pieces: PiecesResult
  readonly shape: SlabShapeResult
}

/** How the slab's own wood and the pieces laid into it fill the table. */
export function optionCoverage(input: OptionCoverageInput): Found<CoverageResult> {
  const { footprint, pieces, shape, pose } = input
  const toTable = invertIsometry(pose)
  const laid = laidPieces(input)
  const coverage = coverageOf({
    finished: footprint.finished,
    blank: footprint.blank,
    sides: input.sides,
    mainWood: pieces.pieces
      .filter(({ use }) => use === 'table')
      .map(({ region }) => applyIsometryToRegion(toTable, region, tablePoint)),
    slabOutline: applyIsometryToRing(toTable, shape.outline, tablePoint),
    voids: shape.voids.map(({ ring, depthMm }) => ({
      ring: applyIsometryToRing(toTable, ring, tablePoint),
      depthMm,
    })),
    laid,
  })
  const placed = laid.map((piece, index) => ({
    placementId: piece.placementId,
    pieceId: piece.pieceId,
    name: piece.name,
    whole: piece.region,
    inBlank: coverage.laid[index]?.inBlank ?? [],
    areaInBlankMm2: coverage.laid[index]?.areaInBlankMm2 ?? 0,
  }))
  const slabWoodAreaMm2 = regionsAreaMm2(shape.wood)
  // By its own route: every piece that the cuts leave, less what of it lies in the blank.
  const leftOverAreaMm2 = pieces.pieceAreaMm2 - coverage.mainAreaMm2 - coverage.laidAreaMm2
  return ready(
    {
      ...coverage,
      placed,
      edgeGapAreaMm2: gapAreaMm2(coverage.gaps, 'edge'),
      voidGapAreaMm2: gapAreaMm2(coverage.gaps, 'void'),
      slabWoodAreaMm2,
      kerfAreaMm2: pieces.kerfAreaMm2,
      leftOverAreaMm2,
      leftOverFraction: slabWoodAreaMm2 > 0 ? leftOverAreaMm2 / slabWoodAreaMm2 : 0,
    },
    coverageIssues(input.optionId, input.sides, coverage, placed),
  )
}

type LaidPlacement = LaidPiece & { readonly placementId: string; readonly pieceId: string }

function laidPieces({ placements, pieces }: OptionCoverageInput): readonly LaidPlacement[] {
  return placements.flatMap((placement) => {
    const piece = pieceById(pieces.pieces, placement.pieceId)
    if (piece === undefined) return []
    const region = applyIsometryToRegion(placement.pose, piece.region, tablePoint)
    return [{ placementId: placement.id, pieceId: placement.pieceId, name: piece.name, region }]
  })
}

function coverageIssues(
  optionId: string,
  sides: SideChoices,
  coverage: ReturnType<typeof coverageOf>,
  placed: CoverageResult['placed'],
): readonly Issue[] {
  const at = ['options', optionId]
  const placementOf = (name: string): string =>
    placed.find((piece) => piece.name === name)?.placementId ?? name
  const overlaps = coverage.overlaps.map(({ name, otherName, areaMm2 }) =>
    issueOf('pieces-overlap', 'warning', [...at, 'placements', placementOf(name), otherName ?? 'table'], {
      pieceName: name,
      otherName: otherName ?? '',
      areaMm2,
    }),
  )
  const outside = placed
    .filter(
      ({ areaInBlankMm2, name }) => areaInBlankMm2 === 0 && !coverage.overlaps.some((o) => o.name === name),
    )
    .map(({ name, placementId }) =>
      issueOf('piece-outside-table', 'warning', [...at, 'placements', placementId], { pieceName: name }),
    )
  const hasOversize = Object.values(sides).some(({ oversizeMm }) => oversizeMm > 0)
  const oversizeShort =
    hasOversize && coverage.sideGaps.length === 0 && gapAreaMm2(coverage.gaps, 'edge') > 0
      ? [issueOf('table-oversize-not-covered', 'note', at, { areaMm2: gapAreaMm2(coverage.gaps, 'edge') })]
      : []
  return [...overlaps, ...outside, ...oversizeShort]
}
