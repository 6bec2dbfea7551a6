import type { AdjustmentInput } from './adjustment'
import { focalPxFrom35mm, USUAL_FOCAL_35MM } from './initialCamera'
import { DEFAULT_OUT_OF_FLAT_MM, type ScaleInput } from './scaleInput'

/**
 * EXIF gives whole millimetres, and some makers count the frame's diagonal, some its width: ±4 %.
 * Without EXIF: most slabs are taken with a phone's main camera, some with its tele or wide one: ±30 %.
 */
const FOCAL_SD = { exif: 0.04, none: 0.3 }
/** The optical axis of phones stands within about half a percent of the picture's diagonal from its centre. */
const CENTRE_SD_SHARE = 0.004
const K1_SD = 0.03
const K2_SD = 0.01
/** No slab bends quite as the formulas do: a share of the readings stays unknown, in either mode. */
const SHAPE_SHARE = 0.03
/** The least deviation that an adjustment keeps apart from zero. */
const LEAST_FLATNESS_SD_MM = 1e-3

/**
 * What is believed of θ before anything is measured.
 * @param tiltPriors of the two turns, when the references do not tell them
 * Rules: PHO-8.
 */
export function scalePriors(
  input: ScaleInput,
  tiltPriors: AdjustmentInput['priors'] | null = null,
): AdjustmentInput['priors'] {
  const size = { widthPx: input.imageWidthPx, heightPx: input.imageHeightPx }
  const exif = input.focalLength35mm ?? null
  const centreSd = CENTRE_SD_SHARE * Math.hypot(size.widthPx, size.heightPx)
  const flatness = input.flatness ?? { kind: 'unknown' }
  const read =
    flatness.kind === 'read' ? flatness : { bowMm: 0, twistMm: 0, readingSdMm: DEFAULT_OUT_OF_FLAT_MM }
  // Where the tilt is assumed, length and middle of the slab are rough, and a reading does not fix the bend.
  const bentMm = Math.hypot(read.bowMm, read.twistMm)
  const leastSdMm = tiltPriors === null ? LEAST_FLATNESS_SD_MM : Math.max(DEFAULT_OUT_OF_FLAT_MM, bentMm)
  const flatnessSdMm = Math.max(Math.hypot(read.readingSdMm, SHAPE_SHARE * bentMm), leastSdMm)
  const free = { mean: 0, sd: Number.POSITIVE_INFINITY }
  return [
    ...(tiltPriors ?? [free, free]),
    free,
    {
      mean: Math.log(focalPxFrom35mm(exif ?? USUAL_FOCAL_35MM, size)),
      sd: exif === null ? FOCAL_SD.none : FOCAL_SD.exif,
    },
    { mean: size.widthPx / 2, sd: centreSd },
    { mean: size.heightPx / 2, sd: centreSd },
    { mean: 0, sd: K1_SD },
    { mean: 0, sd: K2_SD },
    { mean: read.bowMm, sd: flatnessSdMm },
    { mean: read.twistMm, sd: flatnessSdMm },
  ]
}
