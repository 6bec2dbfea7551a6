/** 3×3 rotations, row by row. */
export type Rotation = readonly number[]

export function rotationTimes(a: Rotation, b: Rotation): Rotation {
  const product: number[] = []
  for (let row = 0; row < 3; row++) {
    for (let col = 0; col < 3; col++) {
      let sum = 0
      for (let k = 0; k < 3; k++) sum += (a[row * 3 + k] ?? 0) * (b[k * 3 + col] ?? 0)
      product.push(sum)
    }
  }
  return product
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
