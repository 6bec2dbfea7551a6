export type ResinKind = 'clear' | 'tinted' | 'opaque' | 'pearl'

export const RESIN_KINDS = ['clear', 'tinted', 'opaque', 'pearl'] as const satisfies readonly ResinKind[]

/** How resin is shown. `colour` is #rrggbb; clear resin has none. */
export interface ResinLook {
  readonly kind: ResinKind
  readonly colour: string
}

/** The bench under clear resin, seen through it. */
const UNDER = '#8f8a80'

/** How much of what lies below is hidden. Shown by eye, not a measurement: the picture is an impression. */
const COVER: Readonly<Record<ResinKind, number>> = { clear: 0.12, tinted: 0.72, opaque: 1, pearl: 1 }

type Rgb = readonly [number, number, number]

const rgbOf = (colour: string): Rgb => {
  const read = (from: number): number => Number.parseInt(colour.slice(from, from + 2), 16)
  return [read(1), read(3), read(5)]
}

const mixed = (below: Rgb, above: Rgb, share: number): Rgb => [
  below[0] + (above[0] - below[0]) * share,
  below[1] + (above[1] - below[1]) * share,
  below[2] + (above[2] - below[2]) * share,
]

const cssOf = (rgb: Rgb): string => `rgb(${rgb.map((part) => Math.round(part)).join(' ')})`

/** Colour of the resin's face over the bench, and a lighter and a darker one for light and depth. */
export function resinColours({ kind, colour }: ResinLook): {
  readonly face: string
  readonly light: string
  readonly deep: string
} {
  const tint = kind === 'clear' ? rgbOf('#e8ecec') : rgbOf(colour)
  const face = mixed(rgbOf(UNDER), tint, COVER[kind])
  return {
    face: cssOf(face),
    light: cssOf(mixed(face, [255, 255, 255], 0.35)),
    deep: cssOf(mixed(face, [0, 0, 0], 0.45)),
  }
}
