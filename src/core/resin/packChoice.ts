import { InvariantError } from '../units'
import type { PackKind } from './productSheet'

export interface PackCount {
  readonly pack: PackKind
  readonly count: number
}

export interface PackChoice {
  readonly packs: readonly PackCount[]
  readonly costCents: number
  readonly litres: number
  /** What is left when the need with its margin is covered. */
  readonly leftOverLitres: number
}

interface Best {
  readonly costCents: number
  readonly units: number
  readonly count: number
  /** Index of the pack added last, and how many units are still to be covered before it. */
  readonly pack: number
  readonly before: number
}

const MILLILITRES_PER_LITRE = 1000
const NOTHING: Best = { costCents: 0, units: 0, count: 0, pack: -1, before: 0 }

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b)

const isBetter = (one: Best, other: Best | undefined): boolean =>
  other === undefined ||
  one.costCents < other.costCents ||
  (one.costCents === other.costCents &&
    (one.units < other.units || (one.units === other.units && one.count < other.count)))

/**
 * The cheapest packs that cover a need; of equal cost the least left over, then the fewest packs.
 * @param needLitres  with its margin, ≥ 0; at most 5000
 * @param kinds       each with litres > 0 and a price ≥ 0
 * @returns null where there is no kind of pack
 * @throws InvariantError when a figure is outside its range
 * Method: exact search over whole millilitres, in steps of the greatest common divisor of the pack sizes.
 * Rules: RES-20.
 */
export function packsToBuy(needLitres: number, kinds: readonly PackKind[]): PackChoice | null {
  if (!(needLitres >= 0 && needLitres <= 5000))
    throw new InvariantError('need is out of range', { needLitres })
  const sizes = kinds.map(({ litres }) => Math.round(litres * MILLILITRES_PER_LITRE))
  if (sizes.some((size) => !(size >= 1)) || kinds.some(({ priceCents }) => !(priceCents >= 0)))
    throw new InvariantError('a pack needs a size and a price', { kinds: kinds.length })
  const first = sizes[0]
  if (first === undefined) return null
  const unit = sizes.reduce(greatestCommonDivisor, first)
  const need = Math.ceil((needLitres * MILLILITRES_PER_LITRE) / unit - 1e-9)
  const best: Best[] = [NOTHING]
  for (let units = 1; units <= need; units += 1) {
    let found: Best | undefined
    sizes.forEach((size, pack) => {
      const rest = Math.max(0, units - size / unit)
      const sofar = best[rest] ?? NOTHING
      const next: Best = {
        costCents: sofar.costCents + (kinds[pack]?.priceCents ?? 0),
        units: sofar.units + size / unit,
        count: sofar.count + 1,
        pack,
        before: rest,
      }
      if (isBetter(next, found)) found = next
    })
    best.push(found ?? NOTHING)
  }
  return choiceOf(best, need, kinds, unit, needLitres)
}

function choiceOf(
  best: readonly Best[],
  need: number,
  kinds: readonly PackKind[],
  unit: number,
  needLitres: number,
): PackChoice {
  const counts = kinds.map(() => 0)
  for (let at = need; at > 0;) {
    const step = best[at] ?? NOTHING
    if (step.pack < 0) break
    counts[step.pack] = (counts[step.pack] ?? 0) + 1
    at = step.before
  }
  const chosen = best[need] ?? NOTHING
  const litres = (chosen.units * unit) / MILLILITRES_PER_LITRE
  return {
    packs: kinds.map((pack, index) => ({ pack, count: counts[index] ?? 0 })).filter(({ count }) => count > 0),
    costCents: chosen.costCents,
    litres,
    leftOverLitres: litres - needLitres,
  }
}
