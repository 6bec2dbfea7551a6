import { describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatSlab } from '../../../../tests/support/flatPlan'
import { randomPlan } from '../../../../tests/support/randomPlan'
import { sumCents } from '../../quote'
import { blankShop } from '../blankBuild'
import { computePlan } from '../computePlan'
import { describeIssue } from '../describeIssue'
import type { Option, Plan, Slab } from '../schema'
import type { BuildResult } from './buildResult'
import { ANSWERS_ON_THE_SPOT } from '../pour/slowAnswers'

/** Wood of 2200 × 640 × 50 mm, 60 mm short of a table of 2000 × 800: the gap is 2000 × 60 along the near side. */
const SLAB: Slab = {
  ...flatSlab({ outline: flatBox(-200, -150, 2000, 640) }),
  species: 'walnut',
  moistureFraction: 0.12,
  priceCents: 60_000,
}
const OPTION = flatOption(2000, 800, { xMm: -100, yMm: -100 })

interface Changes {
  readonly slab?: Partial<Slab>
  readonly option?: Partial<Option>
  readonly shop?: Partial<Plan['shop']>
}

const planWith = ({ slab, option, shop }: Changes = {}): Plan => ({
  ...flatPlan({ ...SLAB, ...slab }, { ...OPTION, ...option }),
  shop: { ...blankShop(), ...shop },
})

function built(changes: Changes = {}): BuildResult {
  const part = computePlan(planWith(changes), ANSWERS_ON_THE_SPOT).options.get('option')?.build
  if (part?.state !== 'ready') throw new Error(`build is ${part?.state ?? 'missing'}`)
  return part.value
}

const codesOf = ({ issues }: BuildResult): readonly string[] => issues.map(({ code }) => code)

describe('wood of an option', () => {
  it('BLD-1 knows the species by its name, and takes the maker’s own figures before the table’s', () => {
    expect(built().wood.species?.id).toBe('walnut-black')
    const own = {
      gravity: 0.7,
      radialFraction: 0.04,
      tangentialFraction: 0.06,
      volumetricFraction: 0.1,
      elasticityGPa: null,
    }
    const found = built({ slab: { wood: { ...SLAB.wood, own } } })
    expect(found.wood.species).toMatchObject({ id: 'own', gravity: { value: 0.7, source: 'own' } })
    expect(found.weight.woodKgPerM3).toBeCloseTo(0.7 * 1.12 * 1000, 6)
    expect(found.standing.middleSagMm).toBeNull()
    const unknown = built({ slab: { species: 'moonwood' } })
    expect(unknown.wood.movements).toEqual([])
    expect(unknown.weight).toMatchObject({ woodKgPerM3: 640, densityFrom: 'usual' })
    expect(codesOf(unknown)).toContain('build-species-unknown')
  })

  it('BLD-2 moves each piece across its grain, from its reading to the room’s dry and damp season (by hand)', () => {
    const { wood } = built({
      option: { room: { ...OPTION.room, roomC: 20, dryHumidity: 0.3, dampHumidity: 0.65 } },
    })
    // 740 mm of wood lie in the table. Eq. 4–5 at 20 °C: 6.188 and 11.996 % (tests/check-values/wood.json, by the table).
    expect(wood.dryFraction).toBeCloseTo(0.0619, 3)
    expect(wood.dampFraction).toBeCloseTo(0.12, 3)
    // 740 · (6.188 − 12)/(3000/7.8 − 30 + 12) = −11.73 mm.
    expect(wood.movements).toHaveLength(1)
    expect(wood.movements[0]?.acrossMm).toBeCloseTo(740, 1)
    expect(wood.movements[0]?.toDryMm).toBeCloseTo(-11.73, 1)
    expect(wood.movements[0]?.toDampMm).toBeCloseTo(0, 1)
  })

  it('BLD-2 measures across the grain when the table lies turned on the slab', () => {
    const pose = { xMm: 900, yMm: -150, angleRad: Math.PI / 2, turnedOver: false }
    const footprint = { slabId: 'slab', pose }
    const table = { ...OPTION.table, outline: { kind: 'rectangle', lengthMm: 600, widthMm: 500 } as const }
    const { wood } = built({ option: { footprint, table } })
    // The table's length runs across the slab: 600 mm of it is across the grain.
    expect(wood.movements[0]?.acrossMm).toBeCloseTo(600, 1)
  })

  it('BLD-3 flattens the whole slab and says when ripping first would save the top', () => {
    const cup = [-200, 900, 2000].flatMap((xMm) =>
      (
        [
          [-150, 58],
          [245, 50],
          [640, 58],
        ] as const
      ).map(([yMm, topMm]) => ({ xMm, yMm, topMm, thicknessMm: null })),
    )
    const found = built({ slab: { wood: { ...SLAB.wood, heights: cup } } })
    expect(found.flattening.whole?.flatMm).toBeCloseTo(42, 2)
    expect(codesOf(found)).not.toContain('build-thin-when-flat')
    const thick = built({
      slab: { wood: { ...SLAB.wood, heights: cup } },
      option: { table: { ...OPTION.table, thicknessMm: 45 } },
    })
    expect(codesOf(thick)).toContain('build-thin-when-flat')
    expect(codesOf(built({ slab: { wood: { ...SLAB.wood, heights: cup.slice(0, 2) } } }))).toContain(
      'build-readings-few',
    )
  })
})

describe('weight and form of an option', () => {
  it('BLD-4 weighs slab, cast and top (by hand)', () => {
    const { weight } = built({ option: { resin: { ...OPTION.resin, woodDensityKgPerM3: 600 } } })
    // Slab 2.2 × 0.79 × 0.05 · 600; wood in the blank 2 × 0.74; resin 2 × 0.06 × 0.05 m³ at the sheet's density.
    expect(weight.slabKg).toBeCloseTo(52.14, 2)
    expect(weight.densityFrom).toBe('typed')
    const resinKgPerM3 = (weight.castKg - 44.4) / 0.006
    expect(resinKgPerM3).toBeGreaterThan(1000)
    expect(resinKgPerM3).toBeLessThan(1200)
    expect(weight.topKg).toBeCloseTo(2 * 0.74 * 0.04 * 600 + 2 * 0.06 * 0.04 * resinKgPerM3, 2)
    expect(weight.carriers.top).toHaveLength(4)
    const weighed = built({ slab: { wood: { ...SLAB.wood, massKg: 61 } } })
    expect(weighed.weight).toMatchObject({ slabKg: 61, isSlabWeighed: true, densityFrom: 'weighed' })
    expect(weighed.weight.woodKgPerM3).toBeCloseTo(61 / (2.2 * 0.79 * 0.05), 2)
  })

  it('BLD-5 builds strips where resin opens, saws them from the shop’s sheets, and says if a part is too large', () => {
    const { form } = built()
    // The gap opens on the near side and at both ends.
    expect(form?.parts.map(({ name }) => name)).toEqual([
      'Base 1',
      'Side, start',
      'Side, end',
      'Side, near side',
    ])
    expect(form?.cutting?.sheets).toHaveLength(1)
    expect(form?.isProvenLeast).toBe(true)
    expect(form?.buildRound).toBe(true)
    const small = { id: 'a', name: 'Small', lengthMm: 900, widthMm: 600, costCents: 0 }
    const sheets = [{ ...small, count: null }]
    const joined = built({ shop: { sheets } })
    expect(joined.form?.parts.filter(({ kind }) => kind === 'base').length).toBeGreaterThan(2)
    expect(joined.form?.tooLarge).toEqual([])
    expect(codesOf(built({ shop: { sheets: [] } }))).toContain('build-sheet-too-small')
    expect(codesOf(built({ shop: { sheets: [{ ...small, count: 1 }] } }))).toContain('build-sheets-short')
  })

  it('BLD-5 dams holes where no strip stands, and builds nothing where there is no resin', () => {
    const whole = flatSlab({ voids: [{ ring: flatBox(500, 100, 600, 180), depthMm: null }] })
    const { capture } = whole
    const dammed = built({ slab: { capture } })
    expect(dammed.form?.plan).toBeNull()
    expect(
      dammed.form?.parts.map(({ name, lengthMm, widthMm }) => [
        name,
        Math.round(lengthMm),
        Math.round(widthMm),
      ]),
    ).toEqual([['Plate under void 1', 200, 180]])
    expect(built({ slab: { capture: flatSlab().capture } }).form).toBeNull()
  })

  it('BLD-6 says what tips the table, what does not go in, and where no foot can stand', () => {
    const standing = (more: Partial<Option['standing']>) =>
      built({ option: { standing: { ...OPTION.standing, ...more } } })
    const base = { kind: 'four-legs', insetLengthMm: 900, insetWidthMm: 100, massKg: 5 } as const
    expect(codesOf(standing({ base }))).toContain('build-tips')
    expect(codesOf(standing({ base: { ...base, insetLengthMm: 1000 } }))).toContain('build-no-feet')
    const shut = standing({ door: { widthMm: 60, heightMm: 500 } })
    expect(shut.standing).toMatchObject({ door: false, lift: null, turn: null })
    expect(codesOf(shut)).toContain('build-door')
    expect(standing({ door: { widthMm: 820, heightMm: 2000 } }).standing.door).toBe(true)
    expect(standing({}).standing.seats).toEqual({ alongEachSide: 3, atEachEnd: 1, total: 8 })
  })
})

describe('work and price of an option', () => {
  it('BLD-7 hangs the steps on the day of the first pour and keeps the days off', () => {
    // 2026-11-27 is a Friday (almanac).
    const resin = { ...OPTION.resin, start: { ...OPTION.resin.start, day: '2026-11-27' } }
    const { work } = built({ option: { resin } })
    const days = work.steps
      .filter(({ hours, id }) => hours > 0 && id !== 'pour')
      .flatMap(({ firstDay, lastDay }) => [firstDay, lastDay])
    for (const day of days) expect([5, 6]).not.toContain((((day + 4) % 7) + 7) % 7)
    expect(work.steps.find(({ id }) => id === 'pour')?.firstDay).toBe(0)
    const steps = built()
      .work.steps.map(({ id, hours, waitDays }) => ({ id, hours, waitDays }))
      .toReversed()
    const early = built({ shop: { steps } })
    expect(codesOf(early)).toContain('build-step-early')
  })

  it('BLD-8 prices the slab by its unit, and splits it into top and waste (by hand)', () => {
    const found = built()
    // The top holds 2 × 0.74 × 0.04 m³ of 2.2 × 0.79 × 0.05 m³.
    const used = (2 * 0.74 * 0.04) / (2.2 * 0.79 * 0.05)
    expect(found.price.wood?.inTableCents).toBeCloseTo(60_000 * used, -1)
    expect((found.price.wood?.inTableCents ?? 0) + (found.price.wood?.wasteCents ?? 0)).toBe(60_000)
    const byVolume = built({ slab: { priceCents: 500_000, wood: { ...SLAB.wood, soldBy: 'cubic-metre' } } })
    const wood = byVolume.price.quote.lines.find(({ group }) => group === 'wood')
    expect(wood?.amountCents).toBeCloseTo(500_000 * 2.2 * 0.79 * 0.05, -1)
    expect(codesOf(built({ slab: { priceCents: null } }))).toContain('build-slab-unpriced')
  })

  it('BLD-8 BLD-9 makes lines of all that is priced, and a list of all that is bought', () => {
    const shop: Partial<Plan['shop']> = {
      hourCents: 4500,
      finish: { name: 'Oil', coats: 3, coverM2PerLitre: 12, centsPerLitre: 4000 },
      sheets: [
        { id: 'bought', name: 'Faced board', lengthMm: 2440, widthMm: 1220, count: null, costCents: 5200 },
        { id: 'own', name: 'Offcut', lengthMm: 2440, widthMm: 200, count: 2, costCents: 0 },
      ],
    }
    const quote = { baseCents: 40_000, deliveryCents: 9000, keys: 0, own: [] }
    const found = built({ shop, option: { quote } })
    expect(new Set(found.price.quote.lines.map(({ group }) => group))).toEqual(
      new Set(['wood', 'resin', 'sheets', 'finish', 'hours', 'base', 'delivery']),
    )
    expect(found.price.client.lines.map(({ part }) => part)).toEqual(['top', 'base', 'delivery'])
    expect(sumCents(found.price.client.lines.map(({ amountCents }) => amountCents))).toBe(
      found.price.quote.priceCents,
    )
    const names = found.shopping.map(({ name }) => name)
    expect(names).toContain('Faced board')
    expect(names).not.toContain('Offcut')
    expect(names).toContain('Caulk')
    const longer = built({
      shop,
      option: {
        quote,
        table: { ...OPTION.table, outline: { kind: 'rectangle', lengthMm: 2100, widthMm: 800 } },
      },
    })
    expect(longer.price.quote.priceCents).toBeGreaterThanOrEqual(found.price.quote.priceCents)
  })
})

describe('the answer to a build task', () => {
  it('BLD-10 tells every issue in a sentence', () => {
    const found = built({ slab: { moistureFraction: 0.2 } })
    expect(codesOf(found)).toContain('build-moisture-high')
    expect(codesOf(found)).toContain('build-moves')
    expect(codesOf(found)).toContain('build-form-round')
    for (const issue of found.issues) {
      const sentence = describeIssue(issue, { system: 'mm' })
      expect(sentence).toMatch(/^[A-Z].*[.]$/)
      expect(sentence).not.toMatch(/undefined|NaN|\?/)
    }
    const ids = found.issues.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('BLD-11 is pending until it is given, the same however often, and plain data', () => {
    const plan = planWith()
    const waiting = computePlan(plan).options.get('option')
    expect(waiting?.build).toEqual({ state: 'pending' })
    expect(waiting?.buildTask.state).toBe('ready')
    expect(computePlan(plan).options.get('option')).toBe(waiting)
    expect(structuredClone(built())).toEqual(built())
    const moved = computePlan({ ...plan, name: 'Other' }).options.get('option')
    expect(moved).toBe(waiting)
  })

  it('BLD-11 is given for any plan that has its pieces, with finite figures', () => {
    let given = 0
    for (let seed = 1; seed <= 15; seed += 1) {
      for (const { build } of computePlan(randomPlan(seed), ANSWERS_ON_THE_SPOT).options.values()) {
        if (build.state !== 'ready') continue
        given += 1
        expect(JSON.stringify(build.value)).not.toMatch(/NaN/)
        expect(Number.isFinite(build.value.weight.topKg + build.value.price.quote.priceCents)).toBe(true)
      }
    }
    expect(given).toBeGreaterThan(5)
  })
})
