import type { CutBox } from './cutBox'

export interface SheetRect {
  readonly xMm: number
  readonly yMm: number
  readonly widthMm: number
  readonly heightMm: number
}

export interface PlacedPart extends SheetRect {
  /** Place of the part in the list that was asked for. */
  readonly part: number
  readonly isTurned: boolean
}

/** One cut from edge to edge of the rectangle that it divides; the kerf lies between `atMm` and `atMm` + kerf. */
export interface SheetCut {
  /** upright: at a constant x; level: at a constant y. */
  readonly direction: 'upright' | 'level'
  readonly atMm: number
  readonly fromMm: number
  readonly toMm: number
}

export interface CutDiagram {
  readonly parts: readonly PlacedPart[]
  /** In the order of work. */
  readonly cuts: readonly SheetCut[]
  /** What is left, the largest first; slivers under 20 mm are left out. */
  readonly offcuts: readonly SheetRect[]
}

const LEAST_OFFCUT_MM = 20

class Drawing {
  readonly parts: PlacedPart[] = []
  readonly cuts: SheetCut[] = []
  readonly offcuts: SheetRect[] = []

  constructor(private readonly kerfMm: number) {}

  /** A box in the corner of a rectangle: what is beyond it is sawn off, then the box is divided. */
  trim(box: CutBox, rect: SheetRect): void {
    const rightMm = rect.widthMm - box.widthMm
    const belowMm = rect.heightMm - box.heightMm
    // The cut that leaves the larger single offcut comes first.
    const uprightFirst = rightMm * rect.heightMm >= belowMm * rect.widthMm
    const heightMm = uprightFirst ? rect.heightMm : box.heightMm
    const widthMm = uprightFirst ? box.widthMm : rect.widthMm
    const offRight = () => this.#off('upright', rect, box.widthMm, rightMm, heightMm)
    const offBelow = () => this.#off('level', rect, box.heightMm, belowMm, widthMm)
    if (uprightFirst) offRight()
    offBelow()
    if (!uprightFirst) offRight()
    this.#divide(box, rect.xMm, rect.yMm)
  }

  #off(
    direction: SheetCut['direction'],
    { xMm, yMm }: SheetRect,
    keptMm: number,
    beyondMm: number,
    acrossMm: number,
  ): void {
    if (beyondMm < 1e-6) return
    const isUpright = direction === 'upright'
    const [startMm, alongMm] = isUpright ? [yMm, xMm] : [xMm, yMm]
    this.cuts.push({ direction, atMm: alongMm + keptMm, fromMm: startMm, toMm: startMm + acrossMm })
    const leftMm = beyondMm - this.kerfMm
    if (leftMm < LEAST_OFFCUT_MM || acrossMm < LEAST_OFFCUT_MM) return
    const atMm = alongMm + keptMm + this.kerfMm
    this.offcuts.push(
      isUpright
        ? { xMm: atMm, yMm, widthMm: leftMm, heightMm: acrossMm }
        : { xMm, yMm: atMm, widthMm: acrossMm, heightMm: leftMm },
    )
  }

  #divide(box: CutBox, xMm: number, yMm: number): void {
    const { made, widthMm, heightMm } = box
    if (made.kind === 'part') {
      this.parts.push({ part: made.part, isTurned: made.isTurned, xMm, yMm, widthMm, heightMm })
      return
    }
    const { first, second } = made
    if (made.kind === 'beside') {
      const atMm = xMm + first.widthMm
      this.cuts.push({ direction: 'upright', atMm, fromMm: yMm, toMm: yMm + heightMm })
      this.trim(first, { xMm, yMm, widthMm: first.widthMm, heightMm })
      this.trim(second, { xMm: atMm + this.kerfMm, yMm, widthMm: second.widthMm, heightMm })
      return
    }
    const atMm = yMm + first.heightMm
    this.cuts.push({ direction: 'level', atMm, fromMm: xMm, toMm: xMm + widthMm })
    this.trim(first, { xMm, yMm, widthMm, heightMm: first.heightMm })
    this.trim(second, { xMm, yMm: atMm + this.kerfMm, widthMm, heightMm: second.heightMm })
  }
}

/**
 * Where each part lies on its sheet, and the cuts in order.
 * @param sheet size of the sheet; the box fits in it
 * Rules: FORM-7.
 */
export function cutDiagram(
  box: CutBox,
  sheet: { readonly widthMm: number; readonly heightMm: number },
  kerfMm: number,
): CutDiagram {
  const drawing = new Drawing(kerfMm)
  drawing.trim(box, { xMm: 0, yMm: 0, ...sheet })
  const area = ({ widthMm, heightMm }: SheetRect): number => widthMm * heightMm
  return {
    parts: drawing.parts,
    cuts: drawing.cuts,
    offcuts: drawing.offcuts.toSorted((a, b) => area(b) - area(a)),
  }
}
