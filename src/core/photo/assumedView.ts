import { median } from './pixelWindow'
import { adjust } from './adjustment'
import { type Camera, planePointFromPx } from './camera'
import { focalPxFrom35mm, USUAL_FOCAL_35MM } from './initialCamera'
import type { ScaleInput } from './scaleInput'
import { DEFAULT_TAPE_SD_MM, type ScaleNetwork } from './scaleNetwork'
import { scalePriors } from './scalePriors'
import type { StartingView } from './viewStart'
import { startingSurface } from './startingSurface'

/**
 * How a phone is held over a slab: leaning back by about half a radian off straight-from-above, give or take four tenths,
 * and sideways hardly at all. A figure of our own; it only counts where the references do not tell the tilt.
 */
const USUAL_TILT_RAD = { mean: 0.5, sd: 0.4, sidewaysSd: 0.2 }
const TRIED_TILTS_RAD = [0.2, 0.5, 0.8, 1]
/** Enough to see which tilt leads nowhere; the one that is taken is adjusted to the end afterwards. */
const TRIAL_ITERATIONS = 6

/**
 * A first view from the usual way of holding a phone, brought to scale by the known lengths; null when none of the
 * tilts that are tried shows every mark on the slab. Rules: PHO-17.
 */
export function assumedView(input: ScaleInput, network: ScaleNetwork): StartingView | null {
  const views = TRIED_TILTS_RAD.flatMap((tilt) => {
    const view = viewAt(input, network, tilt)
    return view ? [{ view, cost: quickCost(input, network, view) }] : []
  })
  return views.sort((p, q) => p.cost - q.cost)[0]?.view ?? null
}

function viewAt(input: ScaleInput, network: ScaleNetwork, tilt: number): StartingView | null {
  const size = { widthPx: input.imageWidthPx, heightPx: input.imageHeightPx }
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)]
  const unscaled: Camera = {
    rotation: [1, 0, 0, 0, c, s, 0, -s, c],
    heightMm: 1000,
    lens: {
      focalPx: focalPxFrom35mm(input.focalLength35mm ?? USUAL_FOCAL_35MM, size),
      centrePx: [size.widthPx / 2, size.heightPx / 2],
      k1: 0,
      k2: 0,
    },
    surface: { centreMm: [0, 0], along: [1, 0], halfLengthMm: 1, halfWidthMm: 1, bowMm: 0, twistMm: 0 },
  }
  const places = network.marks.map((m) => planePointFromPx(unscaled, m.px))
  if (!places.flat().every(Number.isFinite)) return null
  const ratios = network.lengths.map((l) => {
    const [p, q] = [places[l.a] ?? [0, 0], places[l.b] ?? [0, 0]]
    return l.lengthMm / Math.hypot(p[0] - q[0], p[1] - q[1])
  })
  const scaled = { ...unscaled, heightMm: 1000 * median(ratios) }
  const camera = { ...scaled, surface: startingSurface(input, network, scaled) }
  return {
    camera,
    marks: network.marks.map((m) => planePointFromPx(camera, m.px, m.heightMm)),
    // A turn about x by a takes a tilt t to t − a.
    tiltPriors: [
      { mean: tilt - USUAL_TILT_RAD.mean, sd: USUAL_TILT_RAD.sd },
      { mean: 0, sd: USUAL_TILT_RAD.sidewaysSd },
    ],
    problems: [],
  }
}

/** How well the adjustment does from here: several tilts may be tried, and some lead nowhere. */
function quickCost(input: ScaleInput, network: ScaleNetwork, view: StartingView): number {
  const { cost } = adjust({
    camera: view.camera,
    marks: network.marks.map((m, i) => ({ start: view.marks[i] ?? [0, 0], heightMm: m.heightMm })),
    sightings: network.marks.map((m, i) => ({ mark: i, px: m.px, sdPx: m.sdPx })),
    lengths: network.lengths.map((l) => ({ ...l, sdMm: Math.max(l.sdMm, DEFAULT_TAPE_SD_MM) })),
    lines: [],
    priors: scalePriors(input, view.tiltPriors),
    mostIterations: TRIAL_ITERATIONS,
  })
  return Number.isFinite(cost) ? cost : Number.POSITIVE_INFINITY
}
