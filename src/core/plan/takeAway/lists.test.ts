import { describe, expect, it } from 'vitest'
import { computePlan } from '../computePlan'
import { ANSWERS_ON_THE_SPOT } from '../pour/slowAnswers'
import { sheetText } from '../text/en/sheet'
import { INCH, MM, sheetPlan } from '../../../../tests/support/sheetPlan'
import { csvText } from './csvText'
import { cutsCsv, partsCsv } from './listsCsv'
import { gatherTakeAway, type TakeAwayInput } from './planDrawing'
import { resultJson } from './resultJson'

const job = sheetPlan()
const result = computePlan(job.plan, ANSWERS_ON_THE_SPOT)

function inputOf(display: TakeAwayInput['display']): TakeAwayInput {
  const input = gatherTakeAway({ ...job, result, display, dateText: '14 March 2026', text: sheetText })
  if (input === null) throw new Error('the plan is not worked out')
  return input
}

const rowsOf = (csv: string): readonly (readonly string[])[] =>
  csv
    .replace(/^\uFEFF/, '')
    .trimEnd()
    .split('\r\n')
    .map((row) => row.split(','))

const UNIT =
  /(Mm|Mm2|Mm3|M2|MPx|Px|PxPerMm|Litres|Kg|KgPerM3|Grams|N|NPerM|Pa|WPerMK|JPerMol|JPerKgK|PerS|C|BandC|Hour|Hours|Minutes|Days|Rad|Fraction|Share|Cents|CentsPerM3|Kwh)$|^(hours?|litres|kg|cubicMetres|boardFeet)(Each)?$|Mm2PerBar$|PerResinBy(Mass|Volume)$/
/** A place, as the file's head says: a pair of mm. */
const isPlace = (value: readonly unknown[]): boolean =>
  value.length === 2 && value.every((part) => typeof part === 'number')

/** Counts, the camera's own numbers, degrees of cure, days of the calendar: no unit to be named. */
const PURE = new Set(
  (
    'along alongEachSide atEachEnd bars carriers count covariance degrees firstDay lastDay focalLength35mm gelDegree ' +
    'homography inverse k1 k2 layer moves number outwards part quantity redundancy rotation screws shift stock total voids'
  ).split(' '),
)

describe('lists', () => {
  it('TAK-3 quotes as RFC 4180 does and disarms what a spreadsheet would work out', () => {
    expect(
      csvText(
        ['a', 'b'],
        [
          ['=1+1', 'x "y", z'],
          [-2.5, null],
        ],
      ),
    ).toBe('\uFEFFa,b\r\n\'=1+1,"x ""y"", z"\r\n-2.5,\r\n')
  })

  it('TAK-4 lists each cut with its length, the unit in the head', () => {
    const [head, ...rows] = rowsOf(cutsCsv(inputOf(MM)))
    const place = head?.indexOf('length_mm') ?? -1
    expect(place).toBeGreaterThan(0)
    const cuts = inputOf(MM).pieces.cuts
    expect(cuts.length).toBeGreaterThan(0)
    expect(rows.map((row) => Number(row[place]))).toEqual(
      cuts.map(({ lengthMm }) => expect.closeTo(lengthMm, 2)),
    )
    const [inchHead, ...inchRows] = rowsOf(cutsCsv(inputOf(INCH)))
    expect(inchHead?.[place]).toBe('length_in')
    // 25.4 mm to the inch.
    expect(Number(inchRows[0]?.[place]) * 25.4).toBeCloseTo(cuts[0]?.lengthMm ?? 0, 2)
  })

  it('TAK-4 lists the table’s wood and the form’s parts', () => {
    const build = result.options.get('option')?.build
    const csv = partsCsv(inputOf(MM), build?.state === 'ready' ? build.value : null)
    const [head, ...rows] = rowsOf(csv)
    expect(head).toEqual(['part', 'use', 'count', 'length_mm', 'width_mm', 'thickness_mm', 'area_m2'])
    const table = rows.find((row) => row[1] === 'table')
    // By hand: the blank is 1910 × 810 mm.
    expect(table?.slice(3, 5).map(Number)).toEqual([1910, 810])
    expect(rows.some((row) => row[1]?.startsWith('form'))).toBe(true)
  })

  it('TAK-4 gives the whole result with units in its names', () => {
    const read: unknown = JSON.parse(resultJson(job.plan, result, '14 March 2026'))
    const names = new Set<string>()
    const walk = (value: unknown, name: string): void => {
      if (typeof value === 'number') names.add(name)
      else if (Array.isArray(value)) {
        if (!isPlace(value)) value.forEach((item) => walk(item, name))
      } else if (value !== null && typeof value === 'object') {
        for (const [key, item] of Object.entries(value)) walk(item, key)
      }
    }
    walk(read, '')
    expect(read).toMatchObject({ planName: 'Plain table', slabs: { slab: { shape: { state: 'ready' } } } })
    const unnamed = [...names].filter((name) => !UNIT.test(name) && !PURE.has(name))
    expect(unnamed.toSorted()).toEqual([])
  })
})
