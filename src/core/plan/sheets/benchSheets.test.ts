import { describe, expect, it } from 'vitest'
import { type PaperName, type Sheet, sheetProblems } from '../../drawing'
import { computePlan } from '../computePlan'
import { ANSWERS_ON_THE_SPOT } from '../pour/slowAnswers'
import { sheetText } from '../text/en/sheet'
import { INCH, MM, sheetPlan, wordsOf } from '../../../../tests/support/sheetPlan'
import { buildCutSheets } from './buildCutSheets'
import { revisionMark } from './revisionMark'
import { SHEET_KINDS, type SheetKind } from './sheetKinds'
import { slabTapes } from './slabTapes'

function sheetsFor(
  kinds: readonly SheetKind[],
  {
    paper = 'a4',
    display = MM,
    job = sheetPlan(),
  }: {
    readonly paper?: PaperName
    readonly display?: typeof MM
    readonly job?: ReturnType<typeof sheetPlan>
  } = {},
): readonly Sheet[] {
  const result = computePlan(job.plan, ANSWERS_ON_THE_SPOT)
  return buildCutSheets({ ...job, result, display, paper, kinds, dateText: '14 March 2026', text: sheetText })
}

describe('bench set', () => {
  it('SHT-11 gives the edge at even stations of a slab whose edge can be worked out by hand', () => {
    const box = [
      [-200, -150],
      [2000, -150],
      [2000, 750],
      [-200, 750],
    ] as const
    // By hand: whole steps of 500 mm from −200 to 2000 are 0 to 2000; the last lies on the end itself.
    const tapes = slabTapes(box, MM)
    expect(tapes.map(({ alongMm }) => alongMm).slice(0, 4)).toEqual([0, 500, 1000, 1500])
    for (const tape of tapes) expect(tape).toMatchObject({ leftAtMm: -150, rightAtMm: 750 })
    // A slanted edge: from y = 0 at x = 0 to y = 100 at x = 1000.
    const wedge = slabTapes(
      [
        [0, 0],
        [1000, 100],
        [1000, 400],
        [0, 400],
      ],
      MM,
    )
    expect(wedge.find(({ alongMm }) => alongMm === 400)).toMatchObject({ leftAtMm: 40, rightAtMm: 400 })
  })

  it('SHT-11 says the stations, and the dangers of turning a slab', () => {
    const [sheet] = sheetsFor(['slab'])
    const words = sheet ? wordsOf(sheet) : ''
    expect(words).toContain('Slab sheet')
    expect(words).toContain('500 mm')
    expect(words).toContain('750 mm')
    expect(words).toContain('150 mm')
    expect(words).toMatch(/turn it with helpers/)
  })

  it('SHT-12 asks the client for a name under the size and the revision; care names heat, sun and humidity', () => {
    const job = sheetPlan()
    const [approval, care] = sheetsFor(['approval', 'care'], { job })
    const words = approval ? wordsOf(approval) : ''
    expect(words).toContain('1900 mm × 800 mm')
    expect(words).toContain(`Signed for revision ${revisionMark(job.plan)}`)
    expect(words).toContain('Client: name, date, signature')
    const careWords = care ? wordsOf(care) : ''
    for (const heading of ['Heat', 'Sun', 'Air of the room']) expect(careWords).toContain(heading)
    expect(careWords).toMatch(/relative humidity/)
  })

  it('SHT-1 marks every sheet with a revision that any change of the plan changes', () => {
    const job = sheetPlan()
    const mark = revisionMark(job.plan)
    expect(mark).toMatch(/^[2-9A-HJ-NP-Z]{4}$/)
    expect(revisionMark({ ...job.plan })).toBe(mark)
    expect(revisionMark({ ...job.plan, note: 'x' })).not.toBe(mark)
    for (const sheet of sheetsFor(SHEET_KINDS, { job })) expect(wordsOf(sheet)).toContain(`Rev. ${mark}`)
  })

  it('SHT-13 leaves the amounts of an invented product sheet off the mix card, and prints a real one’s', () => {
    const job = sheetPlan()
    const amount = /\d\s?(kg|g|L|ml)\b/
    const blockOf = (isExample: boolean): string => {
      const { sheet } = job.option.resin
      const option = { ...job.option, resin: { ...job.option.resin, sheet: { ...sheet, isExample } } }
      const sheets = sheetsFor(['mix'], { job: { ...job, option, plan: { ...job.plan, options: [option] } } })
      const words = sheets.map(wordsOf).join('\n')
      return words.slice(words.indexOf('by weight'), words.indexOf('weighed'))
    }
    expect(blockOf(false)).toMatch(amount)
    expect(blockOf(true)).not.toMatch(amount)
  })

  it('SHT-6 says the dangers of the pour once, on the sheet that is at hand then', () => {
    const headings = (kinds: readonly SheetKind[]): number =>
      sheetsFor(kinds).map(wordsOf).join('\n').split('Before you pour').length - 1
    expect(headings(['cuts', 'table', 'mix'])).toBe(1)
    expect(headings(['table'])).toBe(1)
    expect(headings(['mix'])).toBe(1)
  })

  it.each<PaperName>(['a4', 'a3', 'letter', 'tabloid'])(
    'SHT-8 has nothing clipped or overlapping on %s',
    (paper) => {
      for (const display of [MM, INCH]) {
        const sheets = sheetsFor(SHEET_KINDS, { paper, display })
        expect(sheets.length).toBeGreaterThanOrEqual(SHEET_KINDS.length)
        expect(sheets.flatMap((sheet) => sheetProblems(sheet))).toEqual([])
      }
    },
  )

  it('SHT-1 names no option where there is only one', () => {
    const words = sheetsFor(SHEET_KINDS).map(wordsOf).join('\n')
    expect(words).not.toContain(sheetPlan().option.name)
  })
})
