import { InvariantError } from '../units'

export interface GapSection {
  /** Above the floor of the form. */
  readonly heightMm: number
  readonly areaMm2: number
  /** Widest place along the gap at this height: what decides how hot it gets. */
  readonly widestMm: number
  /** Narrowest place that must still set before the next step: what decides how long it takes. */
  readonly narrowestMm: number
}

/** A hollow to be filled, as horizontal sections: an odd number, at equal heights, from the bottom up. */
export interface PourGap {
  readonly name: string
  readonly kind: 'edge' | 'void' | 'joint' | 'clearance' | 'flood' | 'under'
  readonly sections: readonly GapSection[]
}

const STEP_TOLERANCE = 1e-6

/** @returns whether the sections are what they must be: an odd number ≥ 3, rising in equal steps, nothing negative */
export function isUsableGap(gap: PourGap): boolean {
  const { sections } = gap
  const first = sections[0]
  const last = sections.at(-1)
  if (first === undefined || last === undefined || sections.length < 3 || sections.length % 2 === 0)
    return false
  const stepMm = (last.heightMm - first.heightMm) / (sections.length - 1)
  return (
    stepMm > 0 &&
    sections.every(
      ({ heightMm, areaMm2, widestMm, narrowestMm }, index) =>
        Math.abs(heightMm - first.heightMm - index * stepMm) <=
          STEP_TOLERANCE * Math.max(1, Math.abs(heightMm)) &&
        areaMm2 >= 0 &&
        narrowestMm > 0 &&
        widestMm >= narrowestMm &&
        Number.isFinite(areaMm2 + widestMm),
    )
  )
}

/** Heights of the bottom and the top of a gap, mm. */
export function gapHeightsMm(gap: PourGap): readonly [bottom: number, top: number] {
  const first = gap.sections[0]
  const last = gap.sections.at(-1)
  if (first === undefined || last === undefined)
    throw new InvariantError('a gap needs sections', { name: gap.name })
  return [first.heightMm, last.heightMm]
}

interface Panel {
  readonly startMm: number
  readonly endMm: number
  readonly sections: readonly [GapSection, GapSection, GapSection]
}

function panelsOf(gap: PourGap): readonly Panel[] {
  if (!isUsableGap(gap)) throw new InvariantError('sections of a gap are not usable', { name: gap.name })
  const panels: Panel[] = []
  for (let index = 0; index + 2 < gap.sections.length; index += 2) {
    const [a, b, c] = gap.sections.slice(index, index + 3)
    if (a !== undefined && b !== undefined && c !== undefined)
      panels.push({ startMm: a.heightMm, endMm: c.heightMm, sections: [a, b, c] })
  }
  return panels
}

/** The parabola through three sections, at a share s (0 to 1) of the panel's height. */
function areaInPanel({ sections: [low, middle, high] }: Panel, s: number): number {
  return (
    low.areaMm2 * (1 - s) * (1 - 2 * s) + 4 * middle.areaMm2 * s * (1 - s) + high.areaMm2 * s * (2 * s - 1)
  )
}

/**
 * Volume of a gap between two heights.
 * @param gap     usable sections (isUsableGap)
 * @returns mm³; what lies outside of the gap's heights counts nothing
 * @throws InvariantError when the sections are not usable
 * Method: Simpson's rule on the parabola through each three sections: exact for prismoids, and for a part of one.
 * Rules: RES-13.
 */
export function gapVolumeMm3(gap: PourGap, fromMm: number, toMm: number): number {
  return panelsOf(gap).reduce((sum, panel) => {
    const low = Math.max(fromMm, panel.startMm)
    const high = Math.min(toMm, panel.endMm)
    if (high <= low) return sum
    const height = panel.endMm - panel.startMm
    const at = (heightMm: number): number => areaInPanel(panel, (heightMm - panel.startMm) / height)
    return sum + ((high - low) / 6) * (at(low) + 4 * at((low + high) / 2) + at(high))
  }, 0)
}

/**
 * Area of a gap at a height.
 * @returns mm²; 0 outside of its heights
 */
export function gapAreaMm2(gap: PourGap, heightMm: number): number {
  const panel = panelsOf(gap).find(({ startMm, endMm }) => heightMm >= startMm && heightMm <= endMm)
  return panel === undefined
    ? 0
    : areaInPanel(panel, (heightMm - panel.startMm) / (panel.endMm - panel.startMm))
}

/** Narrowest and widest place of a gap between two heights, mm; null where it has none there. */
export function gapWidthsMm(
  gap: PourGap,
  fromMm: number,
  toMm: number,
): readonly [narrowest: number, widest: number] | null {
  const [bottom, top] = gapHeightsMm(gap)
  const low = Math.max(fromMm, bottom)
  const high = Math.min(toMm, top)
  if (high <= low) return null
  const inside = gap.sections.filter(({ heightMm }) => heightMm > low && heightMm < high)
  const places = [widthsAt(gap, low), widthsAt(gap, high), ...inside]
  return [
    Math.min(...places.map(({ narrowestMm }) => narrowestMm)),
    Math.max(...places.map(({ widestMm }) => widestMm)),
  ]
}

function widthsAt(gap: PourGap, heightMm: number): Pick<GapSection, 'widestMm' | 'narrowestMm'> {
  const above = gap.sections.findIndex((section) => section.heightMm >= heightMm)
  const high = gap.sections[above === -1 ? gap.sections.length - 1 : above]
  if (high === undefined) throw new InvariantError('a gap needs sections', { name: gap.name })
  const low = gap.sections[above - 1] ?? high
  const height = high.heightMm - low.heightMm
  const share = height === 0 ? 0 : Math.min(1, (heightMm - low.heightMm) / height)
  const between = (from: number, to: number): number => from + share * (to - from)
  return {
    widestMm: between(low.widestMm, high.widestMm),
    narrowestMm: between(low.narrowestMm, high.narrowestMm),
  }
}

/**
 * A gap from its ends, with straight sides between: area and widths change evenly with the height. For an edge that
 * leans evenly along its length this is exact; a hollow that tapers both ways needs its middle section measured.
 * Rules: RES-13.
 */
export function gapBetween(
  name: string,
  kind: PourGap['kind'],
  bottom: GapSection,
  top: GapSection,
): PourGap {
  const mean = (of: (section: GapSection) => number): number => (of(bottom) + of(top)) / 2
  const middle: GapSection = {
    heightMm: mean((section) => section.heightMm),
    areaMm2: mean((section) => section.areaMm2),
    widestMm: mean((section) => section.widestMm),
    narrowestMm: mean((section) => section.narrowestMm),
  }
  return { name, kind, sections: [bottom, middle, top] }
}
