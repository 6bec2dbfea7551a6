/** 3×3 rotations, row by row. */
export type Rotation = readonly [number, number, number, number, number, number, number, number, number]

export function rotationTimes(a: Rotation, b: Rotation): Rotation {
  const row = (x: number, y: number, z: number): [number, number, number] => [
    x * b[0] + y * b[3] + z * b[6],
    x * b[1] + y * b[4] + z * b[7],
    x * b[2] + y * b[5] + z * b[8],
  ]
  return [...row(a[0], a[1], a[2]), ...row(a[3], a[4], a[5]), ...row(a[6], a[7], a[8])]
}

/** Turn by the vector's length (radians) about its direction: Rodrigues' formula. */
export function rotationFromVector(x: number, y: number, z: number): Rotation {
  const angle = Math.hypot(x, y, z)
  const s = angle < 1e-8 ? 1 : Math.sin(angle) / angle
  const c = angle < 1e-8 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle)
  return [
    1 - c * (y * y + z * z),
    c * x * y - s * z,
    c * x * z + s * y,
    c * x * y + s * z,
    1 - c * (x * x + z * z),
    c * y * z - s * x,
    c * x * z - s * y,
    c * y * z + s * x,
    1 - c * (x * x + y * y),
  ]
}
