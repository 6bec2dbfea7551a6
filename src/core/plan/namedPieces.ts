import type { Leaf } from '../cuts'
import { isPointInRegion, regionAreaMm2, spanPoint } from '../geometry'
import { type Issue, issueOf } from './issue'
import type { SlabPiece } from './tableResult'
import type { Option } from './schema'

/** Wood smaller than this is not worth a name at the bench, mm²: a block of 40 × 40 mm. It still counts as left over. */
const LEAST_PIECE_MM2 = 1600

type SaidPiece = Option['pieces'][number]

export interface NamingInput {
  readonly optionId: string
  readonly pieces: Option['pieces']
  readonly placements: Option['placements']
  readonly footprint: { readonly slabId: string }
}

/** Pieces with the maker's names where they have one, else with letters, the largest first. */
export function namedPieces(
  leaves: readonly Leaf[],
  { optionId, pieces, placements, footprint }: NamingInput,
): { readonly pieces: readonly SlabPiece[]; readonly issues: readonly Issue[] } {
  const said = pieces.filter((piece) => piece.slabId === footprint.slabId)
  const { owners, issues } = ownersOf(leaves, said, optionId)
  const letters = freeLetters(leaves.length, said)
  const bySize = leaves
    .map((leaf) => ({ leaf, areaMm2: regionAreaMm2(leaf.region), owner: owners.get(leaf) ?? null }))
    .filter(({ areaMm2, owner }) => owner !== null || areaMm2 >= LEAST_PIECE_MM2)
    .sort((a, b) => b.areaMm2 - a.areaMm2)
  const named = bySize.map(({ leaf, areaMm2, owner }): SlabPiece => {
    if (owner !== null) return ownedPiece(leaf, areaMm2, owner, placements)
    const name = leaf.inHand ? '' : (letters.shift() ?? '')
    return {
      key: leaf.inHand ? `table-${areaMm2.toFixed(0)}` : `offcut-${name}`,
      pieceId: null,
      name,
      region: leaf.region,
      areaMm2,
      anchor: spanPoint(leaf.region),
      use: leaf.inHand ? 'table' : 'offcut',
      cutId: leaf.cutId,
    }
  })
  return { pieces: named, issues }
}

function ownedPiece(
  leaf: Leaf,
  areaMm2: number,
  owner: SaidPiece,
  placements: Option['placements'],
): SlabPiece {
  return {
    key: owner.id,
    pieceId: owner.id,
    name: owner.name,
    region: leaf.region,
    areaMm2,
    anchor: owner.anchor,
    use: placements.some(({ pieceId }) => pieceId === owner.id) ? 'placed' : 'offcut',
    cutId: leaf.cutId,
  }
}

/** Which offcut each named piece is, by its anchor. Rules: CUT-8. */
function ownersOf(
  leaves: readonly Leaf[],
  said: readonly SaidPiece[],
  optionId: string,
): { readonly owners: ReadonlyMap<Leaf, SaidPiece>; readonly issues: readonly Issue[] } {
  const owners = new Map<Leaf, SaidPiece>()
  const issues: Issue[] = []
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
  return { owners, issues }
}

/** A, B, … Z, then A2, B2, …, without those that the maker has given. */
function freeLetters(count: number, said: readonly SaidPiece[]): string[] {
  const taken = new Set(said.map(({ name }) => name))
  return Array.from({ length: count + taken.size }, (_, index) => {
    const round = Math.floor(index / 26) + 1
    return String.fromCharCode(65 + (index % 26)) + (round === 1 ? '' : String(round))
  }).filter((letter) => !taken.has(letter))
}

/** Pieces that a placement can be laid from: named, and found in the wood. */
export function pieceById(pieces: readonly SlabPiece[], pieceId: string): SlabPiece | undefined {
  return pieces.find((piece) => piece.pieceId === pieceId)
}
