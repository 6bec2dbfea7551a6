import { InvariantError } from '../units'
import type { Bounds } from '../geometry'
import type { Box } from './sheet'

/** 1 mm on paper stands for `ratio` mm of wood. */
export interface DrawingScale {
  readonly ratio: number
}

/**
 * Scales for work in mm. ISO 5455:1979 recommends 1, 2, 5 and their tens and allows intermediate ones where those do
 * not serve; taken here are those that can be read off the edges 20, 25, 50, 75, 100 and 125 of a usual scale rule,
 * and 15 (common practice, no source).
 */
const METRIC_RATIOS = [1, 2, 2.5, 5, 7.5, 10, 12.5, 15, 20, 25, 50, 75, 100, 125, 200]

/** Inch scale rules: 12, 6, 4, 3, 2, 1 1/2, 1, 3/4, 1/2, 3/8, 1/4, 3/16, 1/8 in to the foot. */
const INCH_RATIOS = [1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 192]

const RATIOS = { mm: METRIC_RATIOS, inch: INCH_RATIOS }

/**
 * The largest drawing of a list of usual scales that fits; never a free one, so that a rule can be laid on it.
 * @param size    extent of what is drawn, mm of wood
 * @param room    mm of paper
 * @param system  which family of scales
 * @returns 1:n; null when even the smallest scale does not fit
 * @throws InvariantError for an extent or a room without size
 * Rules: DRW-5.
 */
export function pickScale(
  size: { readonly widthMm: number; readonly heightMm: number },
  room: { readonly widthMm: number; readonly heightMm: number },
  system: 'mm' | 'inch',
): DrawingScale | null {
  if (!(size.widthMm >= 0 && size.heightMm >= 0 && room.widthMm > 0 && room.heightMm > 0)) {
    throw new InvariantError('a scale needs an extent and room', {
      widthMm: size.widthMm,
      heightMm: size.heightMm,
      roomWidthMm: room.widthMm,
      roomHeightMm: room.heightMm,
    })
  }
  const least = Math.max(size.widthMm / room.widthMm, size.heightMm / room.heightMm)
  const ratio = RATIOS[system].find((candidate) => candidate >= least)
  return ratio === undefined ? null : { ratio }
}

/** How a scale is written: `1:10`, `1:2.5`. */
export const scaleText = ({ ratio }: DrawingScale): string => `1:${ratio}`

/** Where the wood's plane lies on the sheet: scale and a pair of points that fall together. */
export interface DrawingView {
  readonly scale: DrawingScale
  readonly originMm: readonly [xMm: number, yMm: number]
}

/** A view that sets the middle of some bounds in the middle of a box of the sheet. */
export function centredView(scale: DrawingScale, bounds: Bounds, box: Box): DrawingView {
  const middle = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2] as const
  return {
    scale,
    originMm: [
      box.xMm + box.widthMm / 2 - middle[0] / scale.ratio,
      box.yMm + box.heightMm / 2 - middle[1] / scale.ratio,
    ],
  }
}

/**
 * A place of the wood on the sheet.
 * @param place  mm of wood
 * @returns mm of paper
 * Rules: DRW-6.
 */
export const onSheet = (
  { scale, originMm }: DrawingView,
  place: readonly [number, number],
): readonly [number, number] => [originMm[0] + place[0] / scale.ratio, originMm[1] + place[1] / scale.ratio]
