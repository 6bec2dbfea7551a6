/** A part to be sawn; equal parts are counted, not listed. */
export interface CountedPart {
  readonly lengthMm: number
  readonly widthMm: number
  /** Places of the parts of this size in the list that was asked for. */
  readonly places: readonly number[]
}

/**
 * Sets of parts as whole numbers: a place system in which each size has as many digits as there are parts of it, so
 * that equal parts are never told apart.
 */
export class PartCounts {
  readonly weights: readonly number[]
  readonly total: number

  constructor(readonly parts: readonly CountedPart[]) {
    const weights: number[] = []
    let weight = 1
    for (const { places } of parts) {
      weights.push(weight)
      weight *= places.length + 1
    }
    this.weights = weights
    this.total = weight
  }

  countsOf(set: number): readonly number[] {
    return this.parts.map(
      ({ places }, size) => Math.floor(set / (this.weights[size] ?? 1)) % (places.length + 1),
    )
  }

  /** Every set within another, the empty one and itself included, by rising number. */
  subsetsOf(set: number): readonly number[] {
    let found: readonly number[] = [0]
    this.countsOf(set).forEach((count, size) => {
      const weight = this.weights[size] ?? 1
      found = Array.from({ length: count + 1 }, (_, taken) => taken).flatMap((taken) =>
        found.map((other) => other + taken * weight),
      )
    })
    return found
  }
}

/** Parts of one size together, the largest first. */
export function countedParts(
  sizes: readonly { readonly lengthMm: number; readonly widthMm: number }[],
): readonly CountedPart[] {
  const bySize = new Map<string, { lengthMm: number; widthMm: number; places: number[] }>()
  sizes.forEach(({ lengthMm, widthMm }, place) => {
    const [long, short] = [Math.max(lengthMm, widthMm), Math.min(lengthMm, widthMm)]
    const key = `${long}×${short}`
    const known = bySize.get(key)
    if (known === undefined) bySize.set(key, { lengthMm: long, widthMm: short, places: [place] })
    else known.places.push(place)
  })
  return [...bySize.values()].toSorted((a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm)
}
