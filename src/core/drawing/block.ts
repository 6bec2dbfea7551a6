import type { Point } from '../geometry'
import type { Box, DrawItem } from './sheet'

/** Something of known height that can be set down anywhere. */
export interface Block {
  readonly heightMm: number
  /** Stays on the page of the block that follows (a heading). */
  readonly keepWithNext?: boolean
  /** Air above, unless the block stands first on its page. */
  readonly spaceBeforeMm: number
  readonly draw: (topLeft: Point) => readonly DrawItem[]
}

/** Blocks that must stay together: a heading and what follows, up to the first block that may be parted from its next. */
function runsOf(blocks: readonly Block[]): readonly (readonly Block[])[] {
  const runs: Block[][] = []
  let open = false
  for (const block of blocks) {
    const last = runs.at(-1)
    if (open && last) last.push(block)
    else runs.push([block])
    open = block.keepWithNext ?? false
  }
  return runs
}

const heightOf = (run: readonly Block[], isFirst: boolean): number =>
  run.reduce((sum, block, k) => sum + block.heightMm + (isFirst && k === 0 ? 0 : block.spaceBeforeMm), 0)

/**
 * Shares blocks out over pages, in order.
 * @param firstRoomMm  height that the first page still has
 * @param roomMm       height of every further page
 * @returns blocks of each page; the first page may stay empty. A block higher than a page gets one to itself and
 *   shows up in `sheetProblems`.
 * Rules: DRW-12.
 */
export function flowBlocks(
  blocks: readonly Block[],
  firstRoomMm: number,
  roomMm: number,
): readonly (readonly Block[])[] {
  const pages: Block[][] = [[]]
  let left = firstRoomMm
  for (const run of runsOf(blocks)) {
    const page = pages.at(-1) ?? []
    const isFirst = page.length === 0
    const startsNew = heightOf(run, isFirst) > left && !(isFirst && pages.length > 1)
    if (startsNew) {
      pages.push([...run])
      left = roomMm - heightOf(run, true)
    } else {
      page.push(...run)
      left -= heightOf(run, isFirst)
    }
  }
  return pages
}

/** Draws blocks one below the other from the top of a box. */
export function stackBlocks(blocks: readonly Block[], box: Pick<Box, 'xMm' | 'yMm'>): readonly DrawItem[] {
  let y = box.yMm
  return blocks.flatMap((block, k) => {
    if (k > 0) y += block.spaceBeforeMm
    const items = block.draw([box.xMm, y])
    y += block.heightMm
    return items
  })
}

/** Columns side by side as one block that is not parted. */
export function columnsBlock(
  columns: readonly { readonly leftMm: number; readonly blocks: readonly Block[] }[],
  spaceBeforeMm: number,
): Block {
  return {
    heightMm: Math.max(0, ...columns.map((column) => heightOf(column.blocks, true))),
    spaceBeforeMm,
    draw: ([x, y]) =>
      columns.flatMap((column) => stackBlocks(column.blocks, { xMm: x + column.leftMm, yMm: y })),
  }
}
