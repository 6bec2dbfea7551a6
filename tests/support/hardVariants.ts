import type { Point } from '../../src/core/geometry'

export interface HardVariant {
  readonly name: string
  readonly scale: number
  readonly map: (p: Point) => Point
}

/** Every hard fixture is tried as it is, turned by quarter turns, mirrored, and scaled both ways. */
export const HARD_VARIANTS: readonly HardVariant[] = [
  { name: 'as it is', scale: 1, map: (p) => p },
  { name: 'turned by 90°', scale: 1, map: ([x, y]) => [-y, x] },
  { name: 'turned by 180°', scale: 1, map: ([x, y]) => [-x, -y] },
  { name: 'turned by 270°', scale: 1, map: ([x, y]) => [y, -x] },
  { name: 'mirrored', scale: 1, map: ([x, y]) => [-x, y] },
  { name: 'a thousandth', scale: 1e-3, map: ([x, y]) => [x * 1e-3, y * 1e-3] },
  { name: 'a thousandfold', scale: 1e3, map: ([x, y]) => [x * 1e3, y * 1e3] },
]
