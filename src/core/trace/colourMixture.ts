/** Bell curves in several dimensions, weighted: what colours a kind of surface shows. */
export interface ColourMixture {
  readonly dimensions: number
  readonly parts: readonly MixturePart[]
}

interface MixturePart {
  readonly mean: Float64Array
  /** Inverse of the covariance's lower factor, row by row. */
  readonly whitening: Float64Array
  readonly logWeight: number
}

/** Least spread of a colour, in steps of 255: noise and JPEG. */
const LEAST_SPREAD = 3

interface Sums {
  weight: number
  readonly first: Float64Array
  readonly second: Float64Array
}

function lowerFactor(matrix: Float64Array, n: number): Float64Array {
  const lower = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j] ?? 0
      for (let k = 0; k < j; k++) sum -= (lower[i * n + k] ?? 0) * (lower[j * n + k] ?? 0)
      lower[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-6)) : sum / (lower[j * n + j] ?? 1)
    }
  }
  return lower
}

function lowerInverse(lower: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n)
  for (let c = 0; c < n; c++) {
    for (let i = c; i < n; i++) {
      let sum = i === c ? 1 : 0
      for (let k = c; k < i; k++) sum -= (lower[i * n + k] ?? 0) * (inverse[k * n + c] ?? 0)
      inverse[i * n + c] = sum / (lower[i * n + i] ?? 1)
    }
  }
  return inverse
}

function partFrom({ weight, first, second }: Sums, total: number, n: number): MixturePart {
  const mean = first.map((sum) => sum / weight)
  const covariance = second.map((sum, at) => {
    const i = Math.floor(at / n)
    const j = at % n
    return sum / weight - (mean[i] ?? 0) * (mean[j] ?? 0) + (i === j ? LEAST_SPREAD * LEAST_SPREAD : 0)
  })
  const whitening = lowerInverse(lowerFactor(covariance, n), n)
  let logWeight = Math.log(weight / total)
  for (let i = 0; i < n; i++) logWeight += Math.log(whitening[i * n + i] ?? 1)
  return { mean, whitening, logWeight }
}

const emptySums = (n: number): Sums => ({
  weight: 0,
  first: new Float64Array(n),
  second: new Float64Array(n * n),
})

function add(sums: Sums, samples: Float32Array, at: number, n: number, weight: number): void {
  sums.weight += weight
  for (let i = 0; i < n; i++) {
    const value = (samples[at + i] ?? 0) * weight
    sums.first[i] = (sums.first[i] ?? 0) + value
    for (let j = 0; j <= i; j++) {
      sums.second[i * n + j] = (sums.second[i * n + j] ?? 0) + value * (samples[at + j] ?? 0)
    }
  }
}

const squaredDistance = (samples: Float32Array, at: number, centre: Float64Array): number => {
  let sum = 0
  for (let i = 0; i < centre.length; i++) sum += ((samples[at + i] ?? 0) - (centre[i] ?? 0)) ** 2
  return sum
}

/** Spreads starting centres: each the sample farthest from those before. Repeatable. */
function farthestFirst(samples: Float32Array, n: number, count: number): readonly Float64Array[] {
  const total = samples.length / n
  const nearest = new Float64Array(total).fill(Infinity)
  const centreOf = (s: number): Float64Array => Float64Array.from(samples.subarray(s * n, s * n + n))
  const centres = [centreOf(Math.floor(total / 2))]
  while (centres.length < count) {
    const last = centres.at(-1) ?? centreOf(0)
    let farthest = 0
    for (let s = 0; s < total; s++) {
      nearest[s] = Math.min(nearest[s] ?? 0, squaredDistance(samples, s * n, last))
      if ((nearest[s] ?? 0) > (nearest[farthest] ?? 0)) farthest = s
    }
    centres.push(centreOf(farthest))
  }
  return centres
}

function nearestCentre(samples: Float32Array, at: number, centres: readonly Float64Array[]): number {
  let best = 0
  let least = Infinity
  for (const [k, centre] of centres.entries()) {
    const distance = squaredDistance(samples, at, centre)
    if (distance >= least) continue
    least = distance
    best = k
  }
  return best
}

/** One round of nearest centres. */
function gathered(samples: Float32Array, n: number, centres: readonly Float64Array[]): readonly Sums[] {
  const sums = centres.map(() => emptySums(n))
  for (let at = 0; at < samples.length; at += n) {
    const into = sums[nearestCentre(samples, at, centres)]
    if (into !== undefined) add(into, samples, at, n, 1)
  }
  return sums.filter(({ weight }) => weight > 0)
}

/** A sample adds to every part by its share in it; shares below this are left out. */
const LEAST_SHARE = 1e-3

/** One round of expectation and maximisation. */
function improved(samples: Float32Array, n: number, parts: readonly MixturePart[]): readonly MixturePart[] {
  const next = parts.map(() => emptySums(n))
  const shares = new Float64Array(parts.length)
  for (let at = 0; at < samples.length; at += n) {
    for (const [k, part] of parts.entries()) shares[k] = logPart(part, samples, at, n)
    const most = Math.max(...shares)
    let sum = 0
    for (let k = 0; k < shares.length; k++) {
      shares[k] = Math.exp((shares[k] ?? 0) - most)
      sum += shares[k] ?? 0
    }
    for (const [k, into] of next.entries()) {
      const share = (shares[k] ?? 0) / sum
      if (share > LEAST_SHARE) add(into, samples, at, n, share)
    }
  }
  return next.filter(({ weight }) => weight > 1).map((sums) => partFrom(sums, samples.length / n, n))
}

const CENTRE_ROUNDS = 8
const MIXTURE_ROUNDS = 4

/**
 * Fits a mixture to samples by nearest centres, then by expectation and maximisation. Yields between rounds.
 * @param samples one row of `dimensions` numbers each; at least one row
 * @returns at most `count` parts; deterministic
 */
export function* fitMixture(
  samples: Float32Array,
  dimensions: number,
  count: number,
): Generator<void, ColourMixture> {
  const n = dimensions
  const total = samples.length / n
  let centres = farthestFirst(samples, n, Math.min(count, total))
  let sums: readonly Sums[] = []
  for (let round = 0; round < CENTRE_ROUNDS; round++) {
    sums = gathered(samples, n, centres)
    centres = sums.map(({ first, weight }) => first.map((value) => value / weight))
    yield
  }
  let parts: readonly MixturePart[] = sums.map((sum) => partFrom(sum, total, n))
  for (let round = 0; round < MIXTURE_ROUNDS; round++) {
    parts = improved(samples, n, parts)
    yield
  }
  return { dimensions: n, parts }
}

function logPart(part: MixturePart, samples: Float32Array, at: number, n: number): number {
  const { mean, whitening } = part
  let squares = 0
  for (let i = 0; i < n; i++) {
    let value = 0
    for (let j = 0; j <= i; j++)
      value += (whitening[i * n + j] ?? 0) * ((samples[at + j] ?? 0) - (mean[j] ?? 0))
    squares += value * value
  }
  return part.logWeight - squares / 2
}

/** Logarithm of the mixture's density at a row of samples, up to a constant of the dimension. */
export function mixtureLog(mixture: ColourMixture, samples: Float32Array, row: number): number {
  const n = mixture.dimensions
  let most = -Infinity
  let sum = 0
  for (const part of mixture.parts) {
    const value = logPart(part, samples, row * n, n)
    if (value > most) {
      sum = sum * Math.exp(most - value) + 1
      most = value
    } else sum += Math.exp(value - most)
  }
  return most + Math.log(sum)
}
