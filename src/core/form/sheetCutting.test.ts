import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CuttingPlan, CuttingTask, SheetPart } from './cuttingPlan'
import { sheetCutting } from './sheetCutting'
import type { StockSheet } from './sheetStock'

const SEED = 20_261_127
console.info(`sheet cutting properties: seed ${SEED}`)

const part = (lengthMm: number, widthMm: number, name = ''): SheetPart => ({ name, lengthMm, widthMm })
const sheet = (
  lengthMm: number,
  widthMm: number,
  costCents = 100,
  count: number | null = null,
): StockSheet => ({
  name: '',
  lengthMm,
  widthMm,
  count,
  costCents,
})

function solved(task: CuttingTask): CuttingPlan {
  const { plan, isDone, isProvenLeast } = sheetCutting(task).step(Infinity)
  expect(isDone && isProvenLeast).toBe(true)
  if (plan === null) throw new Error('no plan')
  return plan
}

/** Whether parts come out of a rectangle: every first cut at every whole mm, every way to share the parts out. */
function comesOut(parts: readonly SheetPart[], w: number, h: number, kerf: number): boolean {
  const [first, ...rest] = parts
  if (first === undefined) return true
  if (rest.length === 0)
    return (first.lengthMm <= w && first.widthMm <= h) || (first.widthMm <= w && first.lengthMm <= h)
  if (parts.reduce((sum, p) => sum + p.lengthMm * p.widthMm, 0) > w * h) return false
  for (let split = 1; split < 2 ** parts.length - 1; split += 1) {
    const [some, others] = [0, 1].map((side) => parts.filter((_, bit) => ((split >> bit) & 1) === side))
    for (let at = 1; at < w - kerf; at += 1)
      if (comesOut(some ?? [], at, h, kerf) && comesOut(others ?? [], w - at - kerf, h, kerf)) return true
    for (let at = 1; at < h - kerf; at += 1)
      if (comesOut(some ?? [], w, at, kerf) && comesOut(others ?? [], w, h - at - kerf, kerf)) return true
  }
  return false
}

/** The least cost by trying every way to share the parts out among the sheets. */
function leastCost({ parts, stock, kerfMm }: CuttingTask): number {
  const singles = stock.flatMap((s) => Array.from({ length: s.count ?? parts.length }, () => s))
  const costFrom = (at: number, left: readonly SheetPart[]): number => {
    if (left.length === 0) return 0
    const next = singles[at]
    if (next === undefined) return Infinity
    let best = costFrom(at + 1, left)
    for (let taken = 1; taken < 2 ** left.length; taken += 1) {
      const some = left.filter((_, bit) => (taken >> bit) & 1)
      if (!comesOut(some, next.lengthMm, next.widthMm, kerfMm)) continue
      best = Math.min(
        best,
        next.costCents +
          costFrom(
            at + 1,
            left.filter((p) => !some.includes(p)),
          ),
      )
    }
    return best
  }
  return costFrom(0, parts)
}

const rectsOverlap = (
  a: { xMm: number; yMm: number; widthMm: number; heightMm: number },
  b: typeof a,
  gap: number,
): boolean =>
  a.xMm < b.xMm + b.widthMm + gap - 1e-6 &&
  b.xMm < a.xMm + a.widthMm + gap - 1e-6 &&
  a.yMm < b.yMm + b.heightMm + gap - 1e-6 &&
  b.yMm < a.yMm + a.heightMm + gap - 1e-6

/** Every part once, on its sheet, a kerf apart from the others and from the offcuts. */
function expectSound(task: CuttingTask, plan: CuttingPlan): void {
  const placed = plan.sheets.flatMap(({ parts }) => parts.map(({ part: place }) => place))
  expect(placed.toSorted((a, b) => a - b)).toEqual(task.parts.map((_, place) => place))
  for (const use of plan.sheets) {
    const stock = task.stock[use.stock]
    if (stock === undefined) throw new Error('no such sheet')
    const all = [...use.parts, ...use.offcuts]
    for (const rect of all) {
      expect(rect.xMm + rect.widthMm).toBeLessThanOrEqual(stock.lengthMm + 1e-6)
      expect(rect.yMm + rect.heightMm).toBeLessThanOrEqual(stock.widthMm + 1e-6)
    }
    all.forEach((a, at) => {
      for (const b of all.slice(at + 1)) expect(rectsOverlap(a, b, task.kerfMm)).toBe(false)
    })
    for (const { part: place, widthMm, heightMm } of use.parts) {
      const asked = task.parts[place]
      expect(Math.max(widthMm, heightMm)).toBe(Math.max(asked?.lengthMm ?? 0, asked?.widthMm ?? 0))
      expect(widthMm * heightMm).toBe((asked?.lengthMm ?? 0) * (asked?.widthMm ?? 0))
    }
  }
}

describe('sheets sawn into parts', () => {
  it('FORM-5 costs what trying everything costs, on small cases', () => {
    const size = fc.integer({ min: 1, max: 7 })
    const parts = fc.array(fc.tuple(size, size), { minLength: 1, maxLength: 4 })
    const stocks = fc.tuple(
      fc.integer({ min: 6, max: 9 }),
      fc.integer({ min: 6, max: 8 }),
      fc.integer({ min: 0, max: 2 }),
    )
    fc.assert(
      fc.property(parts, stocks, fc.integer({ min: 0, max: 1 }), (sizes, [w, h, have], kerfMm) => {
        const stock = [sheet(w, h, 100), sheet(8, 4, 55), sheet(6, 5, 0, have)]
        const task = { parts: sizes.map(([l, b]) => part(l, b)), stock, kerfMm }
        const least = leastCost(task)
        const { plan, tooLarge } = sheetCutting(task).step(Infinity)
        if (tooLarge.length > 0) {
          expect(least).toBe(Infinity)
          return
        }
        expect(plan?.costCents ?? Infinity).toBe(least)
        if (plan !== null) expectSound(task, plan)
      }),
      { seed: SEED, numRuns: 60 },
    )
  }, 120_000)

  it('FORM-5 finds the five parts round a middle only where cuts from edge to edge allow it', () => {
    // The pinwheel: 4 of 3 × 2 round a 1 × 1 fill 5 × 5, but no cut from edge to edge parts them.
    const parts = [part(3, 2), part(3, 2), part(3, 2), part(3, 2), part(1, 1)]
    expect(comesOut(parts, 5, 5, 0)).toBe(false)
    expect(solved({ parts, stock: [sheet(5, 5)], kerfMm: 0 }).sheets).toHaveLength(2)
  })

  it('FORM-5 beats the plan at once where that wastes a sheet', () => {
    // By hand: a row of two 6 × 4 above a row of two 6 × 5 is 12 × 9.
    const parts = [part(6, 4), part(6, 4), part(6, 5), part(6, 5)]
    expect(solved({ parts, stock: [sheet(12, 9)], kerfMm: 0 }).sheets).toHaveLength(1)
  })

  it('FORM-6 uses what is in the shop before it buys, and each of it once', () => {
    const task = {
      parts: [part(2400, 1200), part(900, 80)],
      stock: [sheet(2440, 1220, 4000), sheet(950, 100, 0, 1)],
      kerfMm: 3,
    }
    const plan = solved(task)
    expect(new Set(plan.sheets.map(({ stock }) => stock))).toEqual(new Set([0, 1]))
    expect(plan.costCents).toBe(4000)
    const twice = solved({ ...task, parts: [...task.parts, part(900, 80)] })
    expect(twice.costCents).toBe(8000)
  })

  it('FORM-6 has a plan at once, says that it is not proven, and proves it in the end by the same count', () => {
    const task = {
      parts: [
        part(2200, 98),
        part(2200, 98),
        part(900, 98),
        part(900, 98),
        part(2300, 1000),
        part(1000, 150),
      ],
      stock: [sheet(2440, 1220, 3900)],
      kerfMm: 3,
    }
    const search = sheetCutting(task)
    const early = search.step(1)
    expect(early).toMatchObject({ isDone: false, isProvenLeast: false })
    if (early.plan === null) throw new Error('no plan at once')
    expectSound(task, early.plan)
    const late = search.step(Infinity)
    expect(late).toMatchObject({ isDone: true, isProvenLeast: true })
    expect(late.plan?.costCents).toBeLessThanOrEqual(early.plan.costCents)
    expect(sheetCutting(task).step(Infinity).evaluations).toBe(late.evaluations)
  })

  it('FORM-6 names the parts that lie on no sheet, and gives no plan', () => {
    const state = sheetCutting({
      parts: [part(100, 50), part(3000, 1300)],
      stock: [sheet(2440, 1220)],
      kerfMm: 3,
    }).step(1)
    expect(state).toMatchObject({ plan: null, isDone: true, isProvenLeast: false, tooLarge: [1] })
    expect(() => sheetCutting({ parts: [part(0, 1)], stock: [], kerfMm: 3 })).toThrow('size')
    expect(() => sheetCutting({ parts: [], stock: [], kerfMm: -1 })).toThrow('kerf')
  })

  it('FORM-7 saws every part free: a cut on each of its edges that is not the edge of the sheet', () => {
    const task = {
      parts: [part(500, 300), part(400, 300), part(700, 200)],
      stock: [sheet(1000, 600)],
      kerfMm: 3,
    }
    const plan = solved(task)
    const [use] = plan.sheets
    const covers = (direction: 'upright' | 'level', edgeMm: number, fromMm: number, toMm: number): boolean =>
      (use?.cuts ?? []).some(
        (cut) =>
          cut.direction === direction &&
          (Math.abs(cut.atMm - edgeMm) < 1e-6 || Math.abs(cut.atMm + 3 - edgeMm) < 1e-6) &&
          cut.fromMm <= fromMm + 1e-6 &&
          cut.toMm >= toMm - 1e-6,
      )
    for (const { xMm, yMm, widthMm, heightMm } of use?.parts ?? []) {
      for (const x of [xMm, xMm + widthMm])
        expect(x < 1e-6 || x > 1000 - 1e-6 || covers('upright', x, yMm, yMm + heightMm)).toBe(true)
      for (const y of [yMm, yMm + heightMm])
        expect(y < 1e-6 || y > 600 - 1e-6 || covers('level', y, xMm, xMm + widthMm)).toBe(true)
    }
  })

  it('FORM-6 proves ten different parts within three million pairs of boxes', () => {
    const parts = Array.from({ length: 10 }, (_, n) => part(600 + 83 * n, 90 + 17 * n))
    const { isProvenLeast, evaluations } = sheetCutting({
      parts,
      stock: [sheet(2440, 1220)],
      kerfMm: 3,
    }).step(3_000_000)
    console.info(`10 different parts: ${evaluations} pairs`)
    expect(isProvenLeast).toBe(true)
  })
})
