import { describe, expect, it } from 'vitest'
import kitchen from '../../../../demo-data/kitchen-table/plan.json'
import library from '../../../../demo-data/library-table/plan.json'
import { INCH, MM, wordsOf } from '../../../../tests/support/sheetPlan'
import { type PaperName, type Sheet, sheetProblems } from '../../drawing'
import { computePlan } from '../computePlan'
import { parsePlan } from '../parsePlan'
import { ANSWERS_ON_THE_SPOT } from '../pour/slowAnswers'
import type { Plan } from '../schema'
import { sheetText } from '../text/en/sheet'
import { buildCutSheets } from './buildCutSheets'
import type { SheetKind } from './sheetKinds'

const BUILD_KINDS = ['form', 'work', 'shopping', 'quote', 'makers-quote'] as const

function planOf(json: unknown, change: (plan: Plan) => Plan = (plan) => plan) {
  const parsed = parsePlan(json)
  if (!parsed.ok) throw new Error(parsed.problem.code)
  const plan = change(parsed.value.plan)
  const [option] = plan.options
  const [slab] = plan.slabs
  if (option === undefined || slab === undefined) throw new Error('the demo has an option and a slab')
  const result = computePlan(plan, ANSWERS_ON_THE_SPOT)
  const build = result.options.get(option.id)?.build
  if (build?.state !== 'ready') throw new Error('the build is ready')
  return { plan, option, slab, result, build: build.value }
}

interface Paper {
  readonly paper?: PaperName
  readonly display?: typeof MM
}

function sheetsFor(
  job: ReturnType<typeof planOf>,
  kinds: readonly SheetKind[],
  { paper = 'a4', display = MM }: Paper = {},
): readonly Sheet[] {
  return buildCutSheets({ ...job, display, paper, kinds, dateText: '14 March 2026', text: sheetText })
}

const allWords = (sheets: readonly Sheet[]): string => sheets.map(wordsOf).join('\n')

/** Amounts in euros as they stand on paper, in cents. */
const centsIn = (words: string): readonly number[] =>
  [...words.matchAll(/€([\d,]+)\.(\d\d)/g)].map(
    ([, whole = '', cents = '']) => Number(whole.replaceAll(',', '')) * 100 + Number(cents),
  )

describe('sheets of form, work and price', () => {
  it.each([
    ['library', library],
    ['kitchen', kitchen],
  ])(
    'SHT-15 the client’s quote of the %s table adds up as it is printed, and tells nothing inside',
    (_, json) => {
      const job = planOf(json)
      const words = allWords(sheetsFor(job, ['quote']))
      const parts = job.build.price.client.lines.length
      const amounts = centsIn(words)
      const [price = 0, tax = 0, total = 0, deposit = 0, balance = 0] = amounts.slice(parts)
      expect(amounts.slice(0, parts).reduce((sum, cents) => sum + cents, 0)).toBe(price)
      expect(price + tax).toBe(total)
      expect(deposit + balance).toBe(total)
      for (const inside of ['Hours', 'Overhead', 'Profit', 'argin', 'Failure', 'failures', 'waste'])
        expect(words).not.toContain(inside)
    },
  )

  it('SHT-15 the maker’s quote names every line, and is in the job’s currency alone', () => {
    const job = planOf(library, (plan) => ({ ...plan, shop: { ...plan.shop, currency: 'GBP' } }))
    const words = allWords(sheetsFor(job, ['makers-quote', 'quote']))
    for (const { name } of job.build.price.quote.lines) expect(words).toContain(name.split(',')[0] ?? name)
    expect(words).toContain('£')
    expect(words).not.toContain('€')
    expect(words).toMatch(/Margin/)
    expect(words).toMatch(/Mark-up/)
  })

  it('SHT-16 the order of work gives each step its day once the pour has one, and names what comes too early', () => {
    const job = planOf(library, (plan) => ({
      ...plan,
      options: plan.options.map((option) => ({
        ...option,
        resin: { ...option.resin, start: { ...option.resin.start, day: '2027-03-10' } },
      })),
      shop: { ...plan.shop, steps: plan.shop.steps.toReversed() },
    }))
    const words = allWords(sheetsFor(job, ['work']))
    expect(words).toContain('Mar')
    expect(words).toContain('Comes too early')
    expect(allWords(sheetsFor(planOf(library), ['work']))).not.toContain('Comes too early')
  })

  it('SHT-16 the shopping list is rounded up', () => {
    const job = planOf(library)
    const caulk = job.build.shopping.find(({ name }) => name === 'Caulk')
    const words = allWords(sheetsFor(job, ['shopping'])).replaceAll('\u00a0', ' ')
    expect(words).toContain(`${Math.ceil(caulk?.quantity ?? NaN)} m`)
  })

  it('SHT-17 the form’s sheet names every part and tells every cut', () => {
    const job = planOf(library)
    const words = allWords(sheetsFor(job, ['form']))
    for (const { name } of job.build.form?.parts ?? []) expect(words).toContain(name)
    const cuts = job.build.form?.cutting?.sheets.flatMap((sheet) => sheet.cuts) ?? []
    expect(cuts.length).toBeGreaterThan(3)
    expect(words.match(/^\d+\. (?:Across|Along),/gm)).toHaveLength(cuts.length)
    expect(words).toMatch(/Proven least|Not proven/)
  })

  it.each(['a4', 'letter', 'a3'] as const)(
    'SHT-8 SHT-15 SHT-16 SHT-17 nothing is clipped or crossed on %s, in mm and inches',
    (paper) => {
      for (const json of [library, kitchen]) {
        const job = planOf(json)
        for (const display of [MM, INCH]) {
          const sheets = sheetsFor(job, BUILD_KINDS, { paper, display })
          expect(sheets.length).toBeGreaterThanOrEqual(BUILD_KINDS.length)
          for (const sheet of sheets) expect(sheetProblems(sheet)).toEqual([])
        }
      }
    },
  )
})
