import { isPointInRegion, type Region, type SlabPoint } from '../geometry'
import { makeCut, type StraightCut } from './makeCut'

export interface NamedCut extends StraightCut<SlabPoint> {
  readonly id: string
  /**
   * What the cut divides: the piece in which an anchor lies, or, along a side of the footprint, all wood still in hand
   * (its waste is then no longer in hand).
   */
  readonly divides: { readonly kind: 'in-hand' } | { readonly kind: 'piece'; readonly anchor: SlabPoint }
}

export interface Leaf {
  readonly region: Region<SlabPoint>
  /** Still part of what the footprint's cuts close in on. */
  readonly inHand: boolean
  /** The cut that set this piece free; null for uncut wood. */
  readonly cutId: string | null
}

export interface MadeCut {
  readonly cutId: string
  /** Where the line meets the wood that it divides, as distances from its `from`; null: it touches none. */
  readonly extentMm: readonly [number, number] | null
  readonly kerfAreaMm2: number
  /** The blade takes all that lay beyond the line: the kerf is wider than what would fall off. */
  readonly takesAll: boolean
}

export interface PieceTree {
  readonly leaves: readonly Leaf[]
  readonly cuts: readonly MadeCut[]
}

/**
 * All pieces of a slab after its cuts, made in order.
 * @param wood the slab's face, voids taken out, mm in the slab frame
 * @param cuts in the order of work
 * @returns the leaves of the piece tree; leaves + kerf = wood
 * Rules: CUT-3, CUT-5.
 */
export function pieceTree(wood: readonly Region<SlabPoint>[], cuts: readonly NamedCut[]): PieceTree {
  let leaves: readonly Leaf[] = wood.map((region) => ({ region, inHand: true, cutId: null }))
  const made: MadeCut[] = []
  for (const cut of cuts) {
    const next: Leaf[] = []
    let kerfAreaMm2 = 0
    let extentMm: readonly [number, number] | null = null
    let fallenCount = 0
    for (const leaf of leaves) {
      if (!isDividedBy(leaf, cut)) {
        next.push(leaf)
        continue
      }
      const result = makeCut(leaf.region, cut)
      kerfAreaMm2 += result.kerfAreaMm2
      fallenCount += result.waste.length
      extentMm = widerExtent(extentMm, result.extentMm)
      next.push(...childrenOf(leaf, cut, result))
    }
    leaves = next
    made.push({ cutId: cut.id, extentMm, kerfAreaMm2, takesAll: extentMm !== null && fallenCount === 0 })
  }
  return { leaves, cuts: made }
}

function isDividedBy(leaf: Leaf, cut: NamedCut): boolean {
  return cut.divides.kind === 'in-hand' ? leaf.inHand : isPointInRegion(cut.divides.anchor, leaf.region)
}

function childrenOf(
  leaf: Leaf,
  cut: NamedCut,
  result: ReturnType<typeof makeCut<SlabPoint>>,
): readonly Leaf[] {
  const touched = result.extentMm !== null
  const cutId = touched ? cut.id : leaf.cutId
  return [
    ...result.kept.map((region) => ({ region, inHand: leaf.inHand, cutId })),
    ...result.waste.map((region) => ({
      region,
      inHand: leaf.inHand && cut.divides.kind === 'piece',
      cutId: cut.id,
    })),
  ]
}

function widerExtent(
  a: readonly [number, number] | null,
  b: readonly [number, number] | null,
): readonly [number, number] | null {
  if (a === null || b === null) return a ?? b
  return [Math.min(a[0], b[0]), Math.max(a[1], b[1])]
}
