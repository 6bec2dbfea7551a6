export interface SpreadLabel {
  /** Where the label's middle would like to be, mm. */
  readonly wantedMm: number
  readonly widthMm: number
}

interface Block {
  /** Index of the first label of the block. */
  readonly first: number
  readonly widthMm: number
  readonly labels: number
  /** Sum over the labels of (wanted middle − its place in the block): the block's best start times its count. */
  readonly pull: number
}

const startOf = (block: Block): number => block.pull / block.labels

function joined(a: Block, b: Block): Block {
  return {
    first: a.first,
    widthMm: a.widthMm + b.widthMm,
    labels: a.labels + b.labels,
    pull: a.pull + b.pull - b.labels * a.widthMm,
  }
}

/** Labels that would overlap are joined into blocks that move as one (pool adjacent violators). */
function blocksOf(labels: readonly SpreadLabel[], gapMm: number): readonly Block[] {
  const blocks: Block[] = []
  labels.forEach((label, first) => {
    const widthMm = label.widthMm + gapMm
    let block: Block = { first, widthMm, labels: 1, pull: label.wantedMm - widthMm / 2 }
    let before = blocks.at(-1)
    while (before !== undefined && startOf(before) + before.widthMm > startOf(block)) {
      block = joined(before, block)
      blocks.pop()
      before = blocks.at(-1)
    }
    blocks.push(block)
  })
  return blocks
}

/**
 * Moves labels in a row apart until none overlaps, as little as can be and without changing their order.
 * @param labels  in the order in which they stand in the row
 * @param row     ends of the row and least gap between labels, mm
 * @returns the middles of the labels, mm; null when the row is too short for all of them
 * Method: least squares of the shifts with order kept (pool adjacent violators), then pushed in from the ends.
 * Rules: DRW-8.
 */
export function spreadLabels(
  labels: readonly SpreadLabel[],
  row: { readonly fromMm: number; readonly toMm: number; readonly gapMm: number },
): readonly number[] | null {
  const needed = labels.reduce((sum, label) => sum + label.widthMm + row.gapMm, 0) - row.gapMm
  if (labels.length > 0 && needed > row.toMm - row.fromMm + 1e-9) return null
  const starts: number[] = []
  for (const block of blocksOf(labels, row.gapMm)) {
    let start = startOf(block)
    for (const label of labels.slice(block.first, block.first + block.labels)) {
      starts.push(start)
      start += label.widthMm + row.gapMm
    }
  }
  return pushedInside(starts, labels, row)
}

function pushedInside(
  starts: readonly number[],
  labels: readonly SpreadLabel[],
  row: { readonly fromMm: number; readonly toMm: number; readonly gapMm: number },
): readonly number[] {
  // A start lies half a gap before its label's left edge; the row's ends need no gap.
  const half = row.gapMm / 2
  let least = row.fromMm - half
  const fromLeft = labels.map((label, k) => {
    const start = Math.max(starts[k] ?? least, least)
    least = start + label.widthMm + row.gapMm
    return start
  })
  let greatest = row.toMm + half
  return labels
    .map((label, k) => ({ label, start: fromLeft[k] ?? 0 }))
    .toReversed()
    .map(({ label, start }) => {
      const width = label.widthMm + row.gapMm
      const placed = Math.min(start, greatest - width)
      greatest = placed
      return placed + width / 2
    })
    .toReversed()
}
