import { type Bounds, ringBounds } from '../../geometry'
import { type ClearanceField, emptyField, fieldStamp, lowerField } from './clearanceField'
import type { FillRoom, FillTask } from './fillTask'
import { JointMeter } from './jointMeter'

/** What stays as it is while pieces are laid and taken out again. */
export interface FillGround {
  readonly task: FillTask
  readonly room: FillRoom
  readonly box: Bounds
  /** How clear every place of the blank is of the wood that stays. */
  readonly field: ClearanceField
  readonly joints: JointMeter
  /** Middles of places in the gaps that are clear of wood, for starts. */
  readonly openPlaces: readonly (readonly [xMm: number, yMm: number])[]
}

/** Distances are kept a little beyond the joint: what is farther off is clear all the same, mm. */
const REACH_BEYOND_MM = 12
/** Cells between two places in a gap. */
const OPEN_STEP = 4

export function fillGround(task: FillTask, room: FillRoom): FillGround {
  const { leastJointMm } = task.limits
  const box = ringBounds(task.blank)
  const field = emptyField(box, leastJointMm + REACH_BEYOND_MM)
  const joints = new JointMeter(leastJointMm + 1)
  for (const region of [...task.wood, ...task.closed]) {
    joints.add(region)
    const stamp = fieldStamp(field, region)
    if (stamp !== null) lowerField(field, stamp)
  }
  return { task, room, box, field, joints, openPlaces: openPlacesOf(field, leastJointMm) }
}

function openPlacesOf(
  { box, columns, rows, mm }: ClearanceField,
  leastJointMm: number,
): readonly (readonly [number, number])[] {
  const places: (readonly [number, number])[] = []
  const [stepX, stepY] = [(box.maxX - box.minX) / (columns - 2), (box.maxY - box.minY) / (rows - 2)]
  for (let row = 1; row < rows - 1; row += OPEN_STEP) {
    for (let column = 1; column < columns - 1; column += OPEN_STEP) {
      if ((mm[row * columns + column] ?? 0) >= leastJointMm) {
        places.push([box.minX + column * stepX, box.minY + row * stepY])
      }
    }
  }
  return places
}
