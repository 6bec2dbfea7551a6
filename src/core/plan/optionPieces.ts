import { type Leaf, type NamedMark, type NamedCut, pieceTree, setOutCut } from '../cuts'
import { spanPoint, isPointInRegion, regionAreaMm2, regionsAreaMm2 } from '../geometry'
import { namedCuts } from './footprintCuts'
import { type Issue, issueOf } from './issue'
import { type Found, ready } from './part'
import type { FootprintResult, PiecesResult, SetOutCut, SlabPiece, SlabShapeResult } from './planResult'
import type { Option } from './schema'

/** Wood smaller than this is not worth a name at the bench, mm²: a block of 40 × 40 mm. It still counts as left over. */
const LEAST_PIECE_MM2 = 1600

export interface PiecesInput {
  readonly optionId: string
  readonly sides: Option['table']['sides']
  readonly cuts: Option['cuts']
  readonly pieces: Option['pieces']
  readonly placements: Option['placements']
  readonly footprint: FootprintResult
  readonly pose: NonNullable<Option['footprint']>['pose']
  readonly shape: SlabShapeResult
  readonly marks: readonly NamedMark[]
}

/** What the cuts make of the slab: pieces by name, and each cut as it is set out at the bench. */
export function optionPieces(input: PiecesInput): Found<PiecesResult> {
  const { footprint, shape } = input
  const cuts = namedCuts(input)
  const tree = pieceTree(shape.wood, cuts)
  const { pieces, issues } = namePieces(tree.leaves, input)
  const yields = (cutId: string): readonly string[] =>
    pieces.filter((piece) => piece.cutId === cutId && piece.use !== 'table').map(({ name }) => name)
  const setOut = tree.cuts.flatMap((made): SetOutCut[] => {
    const cut = cuts.find(({ id }) => id === made.cutId)
    const said = input.cuts.find(({ id }) => id === made.cutId)
    if (cut === undefined || said === undefined || made.extentMm === null) return []
    return [
      {
        ...setOutCut(cut, made.extentMm, input.marks),
        cutId: cut.id,
        number: 0,
        side: said.kind === 'footprint' ? said.side : null,
        kerfMm: cut.kerfMm,
        yields: yields(cut.id),
      },
    ]
  })
  return ready(
    {
      slabId: footprint.slabId,
      pieces,
      cuts: setOut.map((cut, index) => ({ ...cut, number: index + 1 })),
      kerfAreaMm2: tree.cuts.reduce((sum, cut) => sum + cut.kerfAreaMm2, 0),
      pieceAreaMm2: regionsAreaMm2(tree.leaves.map(({ region }) => region)),
    },
    [...issues, ...cutIssues(input, cuts, tree.cuts)],
  )
}

/** Letters go to the larger pieces first: A, B, … Z, then A2, B2, … */
function letterOf(index: number): string {
  const round = Math.floor(index / 26) + 1
  return String.fromCharCode(65 + (index % 26)) + (round === 1 ? '' : String(round))
}

function namePieces(
  leaves: readonly Leaf[],
  { optionId, pieces: namedPieces, placements, footprint }: PiecesInput,
): { readonly pieces: readonly SlabPiece[]; readonly issues: readonly Issue[] } {
  const issues: Issue[] = []
  const said = namedPieces.filter((piece) => piece.slabId === footprint.slabId)
  const owners = new Map<Leaf, (typeof said)[number]>()
  for (const piece of said) {
    const at = ['options', optionId, 'pieces', piece.id]
    const leaf = leaves.find(({ inHand, region }) => !inHand && isPointInRegion(piece.anchor, region))
    const other = leaf === undefined ? undefined : owners.get(leaf)
    if (leaf === undefined) {
      issues.push(issueOf('piece-anchor-lost', 'warning', at, { pieceName: piece.name }))
    } else if (other !== undefined) {
      const values = { pieceName: piece.name, otherName: other.name }
      issues.push(issueOf('piece-anchor-shared', 'warning', at, values))
    } else owners.set(leaf, piece)
  }
  const taken = new Set(said.map(({ name }) => name))
  const free = Array.from({ length: leaves.length + taken.size }, (_, index) => letterOf(index)).filter(
    (letter) => !taken.has(letter),
  )
  const bySize = leaves
    .map((leaf) => ({ leaf, areaMm2: regionAreaMm2(leaf.region), owner: owners.get(leaf) ?? null }))
    .filter(({ areaMm2, owner }) => owner !== null || areaMm2 >= LEAST_PIECE_MM2)
    .sort((a, b) => b.areaMm2 - a.areaMm2)
  const pieces = bySize.map(({ leaf, areaMm2, owner }): SlabPiece => {
    const placed = placements.some(({ pieceId }) => pieceId === owner?.id)
    const name = leaf.inHand ? '' : (owner?.name ?? free.shift() ?? '')
    return {
      key: owner?.id ?? (leaf.inHand ? `table-${areaMm2.toFixed(0)}` : `offcut-${name}`),
      pieceId: owner?.id ?? null,
      name,
      region: leaf.region,
      areaMm2,
      anchor: owner?.anchor ?? spanPoint(leaf.region),
      use: leaf.inHand ? 'table' : placed ? 'placed' : 'offcut',
      cutId: leaf.cutId,
    }
  })
  return { pieces, issues }
}

function cutIssues(
  { optionId, cuts: said, pieces }: PiecesInput,
  cuts: readonly NamedCut[],
  made: readonly { readonly cutId: string; readonly extentMm: readonly [number, number] | null }[],
): readonly Issue[] {
  return said.flatMap((cut, index) => {
    if (cut.kind !== 'line') return []
    const at = ['options', optionId, 'cuts', cut.id]
    const cutName = String(index + 1)
    if (!cuts.some(({ id }) => id === cut.id))
      return [issueOf('cut-piece-unknown', 'blocker', at, { cutName })]
    const missed = made.find(({ cutId }) => cutId === cut.id)?.extentMm === null
    const pieceName = pieces.find(({ id }) => id === cut.pieceId)?.name ?? ''
    return missed ? [issueOf('cut-misses-piece', 'warning', at, { cutName, pieceName })] : []
  })
}

/** Pieces that a placement can be laid from: named, and found in the wood. */
export function pieceById(pieces: readonly SlabPiece[], pieceId: string): SlabPiece | undefined {
  return pieces.find((piece) => piece.pieceId === pieceId)
}
