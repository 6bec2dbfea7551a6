import { regionAreaMm2, ringMoments } from '../../core/geometry'
import { startingPlacement } from '../../core/layout'
import type { CoverageResult, Option, SlabPiece } from '../../core/plan'
import { layPiece } from '../../state/commands'
import { newId } from '../../state/newId'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'

type Gap = CoverageResult['gaps'][number]

/** The largest gap that still waits for wood: at the edge if there is one. */
function largestGap(gaps: readonly Gap[]): Gap | null {
  const rank = (gap: Gap) => (gap.kind === 'edge' ? 1e12 : 0) + regionAreaMm2(gap.region)
  const [largest] = gaps.toSorted((a, b) => rank(b) - rank(a))
  return largest ?? null
}

interface LayInput {
  readonly option: Option
  readonly slabId: string
  readonly piece: SlabPiece
  readonly gaps: readonly Gap[]
}

/** Lays an offcut over the largest gap, selects it and shows the table, where it can be moved and turned. */
export function layIntoGap({ option, slabId, piece, gaps }: LayInput): void {
  const gap = largestGap(gaps)
  if (gap === null || ringMoments(gap.region.outer).areaMm2 === 0) return
  const placementId = newId()
  run(layPiece, {
    optionId: option.id,
    placementId,
    slabId,
    piece: { id: piece.pieceId ?? newId(), name: piece.name, anchor: piece.anchor },
    pose: startingPlacement(piece.region, gap.region),
  })
  sessionStore.setState({
    view: 'table',
    tool: 'select',
    selection: { kind: 'placement', placementId },
  })
}
