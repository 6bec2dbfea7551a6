import { type Region, smallestRectangle, subtractRegions, type TablePoint } from '../../geometry'
import { FILL_LIMITS, type FillLimits, type FillTask } from '../../layout'
import type { OptionResult, SlabShapeResult } from '../planResult'
import type { Option } from '../schema'

export interface FillTaskInput {
  readonly option: Option
  readonly result: OptionResult
  /** Shape of the slab on which the table lies. */
  readonly shape: SlabShapeResult
  /** What differs from the usual: the joint is the option's own, the kerf that of its first cut. */
  readonly limits?: Partial<FillLimits>
  readonly seed: number
}

/**
 * What a fill search is asked for an option as it stands: its offcuts, round its own wood and the pieces already placed.
 * @returns null while the table does not lie on a slab
 * The grain is taken to run along the slab. Rules: LAY-22.
 */
export function fillTaskOf({ option, result, shape, limits = {}, seed }: FillTaskInput): FillTask | null {
  const { footprint, pieces, coverage } = result
  const pose = option.footprint?.pose
  if (
    pose === undefined ||
    footprint.state !== 'ready' ||
    pieces.state !== 'ready' ||
    coverage.state !== 'ready'
  ) {
    return null
  }
  const { mainWood, laid, gaps } = coverage.value
  const { blank } = footprint.value
  const wood = [...mainWood, ...laid.flatMap(({ inBlank }) => inBlank)]
  const { angleRad: grainRad } = smallestRectangle(shape.outline)
  return {
    blank,
    wood,
    closed: closedPlaces(blank, wood, gaps),
    offcuts: pieces.value.pieces
      .filter(({ use }) => use === 'offcut')
      .map(({ key, region }) => ({ key, region, grainRad })),
    tableGrainRad: pose.turnedOver ? pose.angleRad - grainRad : grainRad - pose.angleRad,
    limits: {
      ...FILL_LIMITS,
      leastJointMm: option.leastJointMm,
      kerfMm: option.cuts[0]?.kerfMm ?? FILL_LIMITS.kerfMm,
      ...limits,
    },
    seed,
  }
}

/** Air beyond a kept edge, and holes that an offcut is too thick for. */
function closedPlaces(
  blank: FillTask['blank'],
  wood: readonly Region<TablePoint>[],
  gaps: readonly { readonly region: Region<TablePoint>; readonly depthMm: number | null }[],
): readonly Region<TablePoint>[] {
  const gapRegions = gaps.map(({ region }) => region)
  const air = subtractRegions([{ outer: blank, holes: [] }], [...wood, ...gapRegions])
  return [...air, ...gaps.filter(({ depthMm }) => depthMm !== null).map(({ region }) => region)]
}
