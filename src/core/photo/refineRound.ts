import type { Point, PxPoint } from '../geometry'
import { edgeBetween } from './edgeProfile'
import { type Ellipse, ellipseNormal, ellipsePoint, fitEllipse } from './ellipseFit'
import { growRegion, type PixelRegion, withoutHoles } from './growRegion'
import { colourAt, colourDistance, medianColour, type PixelWindow, windowAround } from './pixelWindow'
import { type RefinedClick, refinedTo, unsure } from './refined'

/** Half widths of the windows that are searched in turn, px: most marks are small, those of a large photo are not. */
const WINDOW_HALVES_PX = [45, 110, 260]
/** Seeds are taken at the click and this far round it: the click may lie on a centre dot. */
const SEED_RADII_PX = [0, 4, 8, 13, 18]
const RIM_SAMPLES = 96
const LEAST_CONTRAST = 25
/** Colour fringes of the lens and the picture's own sharpening shift every rim a little, however well it is fitted. */
const LEAST_SD_PX = 0.13
/** Rim points found, and rms distance from the ellipse, that make it sure. */
const LEAST_RIM_SHARE = 0.6
const MOST_RIM_RMS_PX = 0.6
/** The region covers its own ellipse to this share: a blob of wood grain does not. */
const LEAST_FILL = 0.9
/** The click may stand this share of the mark's half width (and a few px) off its centre. */
const CLICK_SLACK = { share: 0.8, px: 9 }

/**
 * Centre of the round mark (a sticker, a dot, a coin) that was clicked.
 * @param photo the photo at full resolution, or a part of it with 90 px round the click
 * @returns the centre of its outline, or the click and `sure: false`
 * Method: patches of like colour round the click, the largest that fills an ellipse; its rim to a fraction of a pixel
 * on 96 cuts; ellipse by least squares. (The centre of the image of a circle is not quite the image of its centre:
 * 0.1 px for 40 mm at 2 m, alike for all marks of a photo.) Rules: PHO-16.
 */
export function refineRoundMark(photo: PixelWindow, click: PxPoint): RefinedClick {
  for (const half of WINDOW_HALVES_PX) {
    const refined = refineInWindow(windowAround(photo, click, half), click)
    if (refined) return refined
  }
  return unsure(click)
}

function refineInWindow(window: PixelWindow, click: PxPoint): RefinedClick | null {
  if (window.widthPx < 12 || window.heightPx < 12) return null
  const fits = ellipsePatches(window, click).flatMap((patch) => {
    const fit = fitRim(window, patch)
    return fit ? [fit] : []
  })
  const best = fits.sort((p, q) => q.ellipse.semiMinor - p.ellipse.semiMinor)[0]
  if (!best) return null
  const { ellipse } = best
  const offPx = Math.hypot(ellipse.centre[0] - click[0], ellipse.centre[1] - click[1])
  if (offPx > CLICK_SLACK.share * ellipse.semiMinor + CLICK_SLACK.px) return null
  return refinedTo(ellipse.centre, Math.max(LEAST_SD_PX, (2 * best.rms) / Math.sqrt(best.kept)))
}

function ellipsePatches(window: PixelWindow, click: PxPoint): readonly Ellipse[] {
  const patches: Ellipse[] = []
  for (const radius of SEED_RADII_PX) {
    for (let n = 0; n < (radius === 0 ? 1 : 4); n++) {
      const at: Point = [
        click[0] + radius * Math.cos((n * Math.PI) / 2 + radius),
        click[1] + radius * Math.sin((n * Math.PI) / 2 + radius),
      ]
      if (patches.some((e) => isWithin(e, at))) continue
      const seed = medianColour(NEIGHBOURS.map(([dx, dy]) => colourAt(window, [at[0] + dx, at[1] + dy])))
      const region = growRegion(window, at, seed)
      const ellipse = region ? momentEllipse(window, withoutHoles(window, region)) : null
      if (ellipse) patches.push(ellipse)
    }
  }
  return patches
}

const NEIGHBOURS = [-1, 0, 1].flatMap((dy) => [-1, 0, 1].map((dx) => [dx, dy] as const))

const isWithin = ({ centre, semiMinor }: Ellipse, at: Point): boolean =>
  Math.hypot(at[0] - centre[0], at[1] - centre[1]) < 0.9 * semiMinor

/** Ellipse of the same area and second moments; null when the region is not much like it. */
function momentEllipse(window: PixelWindow, region: PixelRegion): Ellipse | null {
  let [sx, sy, n] = [0, 0, 0]
  const pixels: (readonly [number, number])[] = []
  region.mask.forEach((v, i) => {
    if (v === 0) return
    const x = (i % window.widthPx) + 0.5 + window.leftPx
    const y = Math.floor(i / window.widthPx) + 0.5 + window.topPx
    pixels.push([x, y])
    sx += x
    sy += y
    n += 1
  })
  const [mx, my] = [sx / n, sy / n]
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of pixels) {
    xx += (x - mx) ** 2 / n
    xy += ((x - mx) * (y - my)) / n
    yy += (y - my) ** 2 / n
  }
  const half = Math.hypot(xx - yy, 2 * xy) / 2
  const [big, small] = [(xx + yy) / 2 + half, (xx + yy) / 2 - half]
  const ellipse: Ellipse = {
    centre: [mx, my],
    semiMajor: 2 * Math.sqrt(big),
    semiMinor: 2 * Math.sqrt(Math.max(small, 1e-6)),
    angleRad: Math.atan2(2 * xy, xx - yy) / 2,
  }
  const expected = Math.PI * ellipse.semiMajor * ellipse.semiMinor
  const inside = pixels.filter(([x, y]) => isInEllipse(ellipse, x, y)).length
  const looksRound = inside / n > LEAST_FILL && n / expected > LEAST_FILL && ellipse.semiMinor > 2.5
  return looksRound && ellipse.semiMajor < 6 * ellipse.semiMinor ? ellipse : null
}

function isInEllipse({ centre, semiMajor, semiMinor, angleRad }: Ellipse, x: number, y: number): boolean {
  const [dx, dy] = [x - centre[0], y - centre[1]]
  const along = dx * Math.cos(angleRad) + dy * Math.sin(angleRad)
  const across = dy * Math.cos(angleRad) - dx * Math.sin(angleRad)
  return Math.hypot(along / (semiMajor + 0.7), across / (semiMinor + 0.7)) <= 1
}

function fitRim(window: PixelWindow, rough: Ellipse): ReturnType<typeof fitEllipse> {
  let ellipse = rough
  let fit: ReturnType<typeof fitEllipse> = null
  for (let round = 0; round < 2; round++) {
    const reachPx = Math.min(6, Math.max(3, ellipse.semiMinor * 0.5))
    const hits = Array.from({ length: RIM_SAMPLES }, (_, n) => {
      const turn = (2 * Math.PI * n) / RIM_SAMPLES
      return rimHit(window, ellipse, turn, reachPx)
    }).flatMap((hit) => (hit ? [hit] : []))
    fit = hits.length >= LEAST_RIM_SHARE * RIM_SAMPLES ? fitEllipse(hits) : null
    if (fit === null || fit.rms > MOST_RIM_RMS_PX || fit.kept < LEAST_RIM_SHARE * RIM_SAMPLES) return null
    ellipse = fit.ellipse
  }
  return fit
}

function rimHit(
  window: PixelWindow,
  ellipse: Ellipse,
  turn: number,
  reachPx: number,
): readonly [number, number] | null {
  const at = ellipsePoint(ellipse, turn)
  const normal = ellipseNormal(ellipse, turn)
  const colour = (offset: number): ReturnType<typeof colourAt> =>
    colourAt(window, [at[0] + offset * normal[0], at[1] + offset * normal[1]])
  const inside = medianColour([colour(-reachPx), colour(-reachPx + 0.7), colour(-reachPx + 1.4)])
  const outside = medianColour([colour(reachPx), colour(reachPx - 0.7), colour(reachPx - 1.4)])
  if (colourDistance(inside, outside) < LEAST_CONTRAST) return null
  return edgeBetween(window, at, normal, reachPx, { inside, outside })?.at ?? null
}
