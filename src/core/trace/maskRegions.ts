/** A mask of one number a pixel: 0 is outside. */
export interface Mask {
  readonly widthPx: number
  readonly heightPx: number
  readonly inside: Uint8Array
}

/** Marks all pixels of `value` that hang together with the seeds (by sides). */
export function floodFrom(mask: Mask, seeds: Iterable<number>, value: 0 | 1): Uint8Array {
  const { widthPx, heightPx, inside } = mask
  const reached = new Uint8Array(inside.length)
  const stack: number[] = []
  const visit = (at: number): void => {
    if (inside[at] !== value || reached[at] === 1) return
    reached[at] = 1
    stack.push(at)
  }
  for (const seed of seeds) visit(seed)
  while (stack.length > 0) {
    const at = stack.pop() ?? 0
    const x = at % widthPx
    if (x > 0) visit(at - 1)
    if (x < widthPx - 1) visit(at + 1)
    if (at >= widthPx) visit(at - widthPx)
    if (at < widthPx * (heightPx - 1)) visit(at + widthPx)
  }
  return reached
}

function* frame(widthPx: number, heightPx: number): Generator<number> {
  for (let x = 0; x < widthPx; x++) {
    yield x
    yield (heightPx - 1) * widthPx + x
  }
  for (let y = 0; y < heightPx; y++) {
    yield y * widthPx
    yield y * widthPx + widthPx - 1
  }
}

/** The mask without holes: what is outside is only what the frame of the picture reaches. */
export function withoutHoles(mask: Mask): Mask {
  const outside = floodFrom(mask, frame(mask.widthPx, mask.heightPx), 0)
  return { ...mask, inside: outside.map((reached) => 1 - reached) }
}

/** The pixels of each part of a mask that hangs together by sides. */
export function maskParts({ widthPx, heightPx, inside }: Mask): readonly (readonly number[])[] {
  const left = inside.slice()
  const parts: number[][] = []
  for (let start = 0; start < left.length; start++) {
    if (left[start] !== 1) continue
    const part = [start]
    left[start] = 0
    const visit = (at: number): void => {
      if (left[at] !== 1) return
      left[at] = 0
      part.push(at)
    }
    for (let n = 0; n < part.length; n++) {
      const at = part[n] ?? 0
      const x = at % widthPx
      if (x > 0) visit(at - 1)
      if (x < widthPx - 1) visit(at + 1)
      if (at >= widthPx) visit(at - widthPx)
      if (at < widthPx * (heightPx - 1)) visit(at + widthPx)
    }
    parts.push(part)
  }
  return parts
}
