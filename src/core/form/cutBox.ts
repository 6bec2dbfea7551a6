/** A rectangle that parts are sawn out of by cuts from edge to edge. */
export interface CutBox {
  readonly widthMm: number
  readonly heightMm: number
  readonly made: CutNode
}

export type CutNode =
  | { readonly kind: 'part'; readonly part: number; readonly isTurned: boolean }
  /** Two boxes with a kerf between them: side by side, or one above the other. */
  | { readonly kind: 'beside' | 'above'; readonly first: CutBox; readonly second: CutBox }

const EPSILON_MM = 1e-6

export const fitsIn = (
  box: { widthMm: number; heightMm: number },
  widthMm: number,
  heightMm: number,
): boolean => box.widthMm <= widthMm + EPSILON_MM && box.heightMm <= heightMm + EPSILON_MM

/** Adds a box where none of the others is as small both ways; drops those that it makes needless. */
export function addSmallest(front: CutBox[], box: CutBox): void {
  for (const other of front) if (fitsIn(other, box.widthMm, box.heightMm)) return
  let kept = 0
  for (const other of front) {
    if (fitsIn(box, other.widthMm, other.heightMm)) continue
    front[kept] = other
    kept += 1
  }
  front.length = kept
  front.push(box)
}

export const partBoxes = (part: number, lengthMm: number, widthMm: number): readonly CutBox[] => [
  { widthMm: lengthMm, heightMm: widthMm, made: { kind: 'part', part, isTurned: false } },
  { widthMm, heightMm: lengthMm, made: { kind: 'part', part, isTurned: true } },
]

export const beside = (first: CutBox, second: CutBox, kerfMm: number): CutBox => ({
  widthMm: first.widthMm + kerfMm + second.widthMm,
  heightMm: Math.max(first.heightMm, second.heightMm),
  made: { kind: 'beside', first, second },
})

export const above = (first: CutBox, second: CutBox, kerfMm: number): CutBox => ({
  widthMm: Math.max(first.widthMm, second.widthMm),
  heightMm: first.heightMm + kerfMm + second.heightMm,
  made: { kind: 'above', first, second },
})
