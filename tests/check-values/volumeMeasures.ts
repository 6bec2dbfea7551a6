import {
  clearanceLitres,
  gapBetween,
  gapVolumeMm3,
  sidePressurePa,
  sideThrustNPerM,
  solidVolumeMm3,
  underCupLitres,
  upliftKgfPerM2,
  type PourGap,
} from '../../src/core/resin'
import { number, type Inputs } from './heatMeasures'

const prismoid = (sections: readonly (readonly [heightMm: number, areaMm2: number])[]): PourGap => ({
  name: 'check',
  kind: 'void',
  sections: sections.map(([heightMm, areaMm2]) => ({ heightMm, areaMm2, widestMm: 10, narrowestMm: 10 })),
})

/** Square frustum from three sections. */
export function frustum(inputs: Inputs): number {
  const [a, b, h] = [number(inputs, 'bottomMm'), number(inputs, 'topMm'), number(inputs, 'heightMm')]
  const gap = prismoid([
    [0, a * a],
    [h / 2, ((a + b) / 2) ** 2],
    [h, b * b],
  ])
  return gapVolumeMm3(gap, 0, h)
}

/** Sphere of radius 1 from its sections. */
export const sphere = (): number => solidVolumeMm3((z) => Math.PI * Math.max(0, 1 - z * z), -1, 1)

/** Gap whose width and depth both change along its length, by sections across the length; litres. */
export function taperedGap(inputs: Inputs): number {
  const [w0, w1] = [number(inputs, 'startWidthMm'), number(inputs, 'endWidthMm')]
  const [d0, d1] = [number(inputs, 'startDepthMm'), number(inputs, 'endDepthMm')]
  const lengthMm = number(inputs, 'lengthMm')
  const area = (x: number): number => (w0 + ((w1 - w0) * x) / lengthMm) * (d0 + ((d1 - d0) * x) / lengthMm)
  return solidVolumeMm3(area, 0, lengthMm) / 1e6
}

/** Leaning gap, layer by layer: mean widths at top and bottom over a length; litres. */
export function leaningGap(inputs: Inputs): number {
  const [top, bottom] = [number(inputs, 'topWidthMm'), number(inputs, 'bottomWidthMm')]
  const [lengthMm, depthMm] = [number(inputs, 'lengthMm'), number(inputs, 'depthMm')]
  const end = (heightMm: number, widthMm: number) => ({
    heightMm,
    areaMm2: widthMm * lengthMm,
    widestMm: widthMm,
    narrowestMm: widthMm,
  })
  const gap = gapBetween('check', 'edge', end(0, bottom), end(depthMm, top))
  return [0, 1, 2, 3, 4].reduce(
    (sum, step) => sum + gapVolumeMm3(gap, (step * depthMm) / 5, ((step + 1) * depthMm) / 5) / 1e6,
    0,
  )
}

export const cup = (inputs: Inputs): number =>
  underCupLitres(number(inputs, 'lengthMm'), number(inputs, 'widthMm'), number(inputs, 'riseMm'))

export const clearance = (inputs: Inputs): number =>
  clearanceLitres(number(inputs, 'contactLengthMm'), number(inputs, 'clearanceMm'), number(inputs, 'depthMm'))

const GRAVITY = 9.80665

export function upliftN(inputs: Inputs): number {
  const areaM2 = (number(inputs, 'lengthMm') * number(inputs, 'widthMm')) / 1e6
  return uplift(inputs) * areaM2 * GRAVITY
}

export const uplift = (inputs: Inputs): number =>
  upliftKgfPerM2(
    number(inputs, 'resinDepthMm'),
    number(inputs, 'thicknessMm'),
    number(inputs, 'woodKgPerM3'),
    number(inputs, 'resinKgPerM3'),
  )

export const pressure = (inputs: Inputs): number =>
  sidePressurePa(number(inputs, 'depthMm'), number(inputs, 'resinKgPerM3'))

export const thrust = (inputs: Inputs): number =>
  sideThrustNPerM(number(inputs, 'depthMm'), number(inputs, 'resinKgPerM3'))
