import type { Point } from '../../core/geometry'
import type { Size } from './view'

/** A text on a plate, wanted at a place on screen. */
export interface Label {
  readonly id: string
  readonly text: string
  /** The plate's middle, screen px. */
  readonly at: Point
  /** Higher ones are placed first; those that find no room are left out, unless they must stay. */
  readonly rank: number
  readonly mustStay: boolean
  readonly strong: boolean
}

export interface PlacedLabel extends Label {
  readonly width: number
  readonly height: number
}

/** Free space between plates, px. */
const GAP_PX = 3
/** Ways to step aside, in plate heights and widths, nearest first. */
const STEPS: readonly Point[] = [
  [0, 0],
  [0, -1],
  [0, 1],
  [0.6, 0],
  [-0.6, 0],
  [0.6, -1],
  [-0.6, -1],
  [0, 2],
  [0, -2],
]

/**
 * Places plates so that none covers another: each steps aside to the nearest free place.
 * @param measure width of a text, px
 */
export function placeLabels(
  labels: readonly Label[],
  plateHeight: number,
  measure: (label: Label) => number,
  canvas: Size,
): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = []
  for (const label of labels.toSorted((a, b) => b.rank - a.rank)) {
    const width = measure(label)
    const tries = STEPS.map(([dx, dy]): PlacedLabel => ({
      ...label,
      at: [label.at[0] + dx * width, label.at[1] + dy * (plateHeight + GAP_PX)],
      width,
      height: plateHeight,
    }))
    const free = tries.find(
      (plate) => isWhole(plate, canvas) && !placed.some((other) => overlap(plate, other)),
    )
    const last = label.mustStay ? tries[0] : undefined
    const chosen = free ?? last
    if (chosen) placed.push(chosen)
  }
  return placed
}

function overlap(a: PlacedLabel, b: PlacedLabel): boolean {
  return (
    Math.abs(a.at[0] - b.at[0]) < (a.width + b.width) / 2 + GAP_PX &&
    Math.abs(a.at[1] - b.at[1]) < (a.height + b.height) / 2 + GAP_PX
  )
}

/** A plate that leaves the canvas cannot be read. */
function isWhole({ at, width, height }: PlacedLabel, canvas: Size): boolean {
  return (
    at[0] - width / 2 >= 0 &&
    at[0] + width / 2 <= canvas.width &&
    at[1] - height / 2 >= 0 &&
    at[1] + height / 2 <= canvas.height
  )
}
