import { describe, expect, it } from 'vitest'
import { formatLength, formatPercent, type LengthDisplay } from '../../units'
import { type PaperName, type Sheet, sheetProblems } from '../../drawing'
import { slabPoint } from '../../geometry'
import type { Verdict } from '../../layout'
import { computePlan } from '../computePlan'
import { sheetText } from '../text/en/sheet'
import { INCH, MM, SHEET_OUTLINE, sheetPlan, sheetsOf, wordsOf } from '../../../../tests/support/sheetPlan'
import { flatSlab } from '../../../../tests/support/flatPlan'
import { randomPlan } from '../../../../tests/support/randomPlan'
import { verdictText } from './verdictText'

const PAPERS: readonly PaperName[] = ['a4', 'letter', 'a3', 'tabloid']
const LONG_NAME = 'Ölberger Wirtshaustisch mit dem langen Namen, '.repeat(5).slice(0, 200)

const wordsOfAll = (sheets: readonly Sheet[]): string => sheets.map(wordsOf).join('\n')
const problemsOf = (sheets: readonly Sheet[]) =>
  sheets.flatMap((sheet, k) => sheetProblems(sheet).map((problem) => ({ page: k + 1, ...problem })))

/** A ring of the first page by the width of its line and its count of corners. */
const ringOf = (sheet: Sheet | undefined, widthMm: number, corners: number) =>
  sheet?.items
    .flatMap((item) => (item.kind === 'polygon' && item.stroke?.widthMm === widthMm ? item.rings : []))
    .find((ring) => ring.length === corners) ?? []

describe('buildCutSheets', () => {
  it('SHT-1 says on every sheet what it is, of which plan, from when, and which page of how many', () => {
    const sheets = sheetsOf()
    expect(sheets.length).toBeGreaterThanOrEqual(3)
    sheets.forEach((sheet, k) => {
      const words = wordsOf(sheet)
      expect(words).toContain(`Page ${k + 1} of ${sheets.length}`)
      expect(words).toContain(`${sheet.title} · 14 March 2026`)
      expect(words).toContain('Demo, all made up · Plain table')
      expect(words).toContain('Plain table · Flat slab')
    })
    const real = sheetsOf(sheetPlan({ plan: { invented: false } }))
    expect(wordsOfAll(real)).not.toContain('made up')
  })

  it('SHT-1 has all sheets of a job lie the same way on the paper asked for', () => {
    for (const paper of PAPERS) {
      const sheets = sheetsOf(sheetPlan(), { paper })
      expect(new Set(sheets.map((sheet) => `${sheet.paper} ${sheet.orientation}`))).toEqual(
        new Set([`${paper} landscape`]),
      )
    }
  })

  it.each(PAPERS)('SHT-3 draws the slab to the scale it states, on %s', (paper) => {
    const [first] = sheetsOf(sheetPlan(), { paper })
    const ratio = Number(/Scale 1:([\d.]+)/.exec(wordsOf(first!))?.[1])
    const ring = ringOf(first, 0.5, SHEET_OUTLINE.length)
    expect(ring).toHaveLength(8)
    // Every distance between two corners of the outline, on paper, against the slab's own.
    SHEET_OUTLINE.forEach((a, i) =>
      SHEET_OUTLINE.forEach((b, j) => {
        const [p, q] = [ring[i]!, ring[j]!]
        const onPaper = Math.hypot(q[0] - p[0], q[1] - p[1])
        expect(Math.abs(onPaper - Math.hypot(b[0] - a[0], b[1] - a[1]) / ratio)).toBeLessThan(0.01)
      }),
    )
  })

  it('SHT-3 numbers every cut, letters its ends, and names marks and pieces', () => {
    const [first] = sheetsOf()
    const texts = wordsOf(first!).split('\n')
    for (const label of ['1', '2', '3', '4', 'A', 'B', 'C', 'D', 'datum']) expect(texts).toContain(label)
    for (const end of ['1a', '1b', '2a', '2b', '3a', '3b', '4a', '4b']) expect(texts).toContain(end)
    expect(texts).toContain('at −55 mm')
    expect(texts).toContain('105 mm left')
    expect(texts).toContain('705 mm right')
    expect(texts).toContain('at 1855 mm')
  })

  it('SHT-4 lists each cut with what sets it out and what checks it', () => {
    const list = wordsOf(sheetsOf()[1]!)
    // Start of the blank at x = −55, right through the slab: 150 left to 750 right, 900 mm; square to the datum.
    for (const words of ['start', '−55 mm', '150 mm left', '750 mm right', '900 mm']) {
      expect(list.split('\n')).toContain(words)
    }
    // Near side at y = 705 from x = −55 to 1855: 1910 mm.
    for (const words of ['near side', '705 mm right', '1855 mm', '1910 mm']) {
      expect(list.split('\n')).toContain(words)
    }
    expect(list).toContain('Kerf 3 mm, all of it in the waste.')
    expect(list).toContain('90.0° to the datum.')
    expect(list).toMatch(/Falls off: offcut [A-Z]/)
    expect(list).toContain('checked')
  })

  it('SHT-4 tapes the near cut’s second end from mark C: √(55² + 105²) is 119 mm', () => {
    expect(wordsOf(sheetsOf()[1]!).replaceAll('\n', ' ')).toContain('4b by tape: 119 mm from C')
  })

  it('SHT-4 says on which side of each line the waste lies, as one looks from a to b', () => {
    const result = computePlan(sheetPlan().plan).options.get('option')
    const list = wordsOf(sheetsOf()[1]!)
    // Walking along the datum (to the right, y down) the far cut's waste (y < −105) is left, the near one's right.
    const sides = result?.pieces.state === 'ready' ? result.pieces.value.cuts : []
    expect(sides.map(({ side, wasteSide }) => [side, wasteSide]).slice(2)).toEqual([
      ['far', 'left'],
      ['near', 'right'],
    ])
    expect(list).toContain('Waste on the left, looking from 3a to 3b.')
    expect(list).toContain('Waste on the right, looking from 4a to 4b.')
  })

  it('SHT-5 tells how to chalk the datum from mark to mark', () => {
    const list = wordsOf(sheetsOf()[1]!).replaceAll('\n', ' ')
    expect(list).toContain('Snap a chalk line from mark A through mark B')
    expect(list).toContain('Tape from A to B: it must read 1800 mm.')
    expect(list).toContain('2200 mm along the datum and 900 mm across')
  })

  it('SHT-5 tells how to find by tape a datum that starts at no mark', () => {
    const slab = flatSlab()
    if (slab.capture.kind !== 'photo') throw new Error('the flat slab has a photo')
    const datum = { photoId: 'photo', fromPx: [530, 460], toPx: [2300, 500] } as const
    const moved = { ...slab.capture, datum: datum as unknown as typeof slab.capture.datum }
    const list = wordsOfAll(sheetsOf(sheetPlan({ slab: { capture: moved } }))).replaceAll('\n', ' ')
    // From mark A at (500, 500): 30 along and 40 across is 50 mm.
    expect(list).toContain('Zero: 50 mm from mark A')
    expect(list).toContain('The other end: 0 mm from mark B')
    // (30, −40) to (1800, 0): √(1770² + 40²) is 1770.45 mm.
    expect(list).toContain('Tape from zero to the other end: it must read 1770 mm.')
  })

  it('SHT-6 names what can hurt, and defers to the product’s own sheet', () => {
    const words = wordsOfAll(sheetsOf()).replaceAll('\n', ' ')
    for (const danger of [
      'throw the saw back',
      'wedge',
      'A slab is heavy',
      'Wood dust harms the lungs',
      'lasting skin allergy',
      'nitrile gloves',
      'fresh air',
      'leave it, ventilate, do not touch',
      'thin trays outdoors',
      'Never into a bin',
      'half-cured resin counts as uncured',
      "Follow the product's own sheet",
    ]) {
      expect(words).toContain(danger)
    }
    expect(wordsOf(sheetsOf()[0]!).replaceAll('\n', ' ')).toContain('throw the saw back')
  })

  it('SHT-7 gives the resin by hand: 0.342 L at the edge, 0.5 L in the void, 0.927 L to mix', () => {
    const words = wordsOfAll(sheetsOf())
    for (const figure of ['50 mm', '0.342 L', '0.500 L', '0.842 L', '0.927 L', '1.00 kg']) {
      expect(words.split('\n')).toContain(figure)
    }
    expect(words.replaceAll('\n', ' ')).toContain('An estimate: edges and voids are taken as standing square')
    // 50 mm deep from x = 1095 to 1305.
    expect(words).toContain('near side: up to 50 mm deep, along 210 mm')
  })

  it('SHT-7 says so when there is nothing to fill', () => {
    const slab = flatSlab()
    const laid = sheetPlan({ slab })
    const sides = laid.option.table.sides
    expect(Object.values(sides).every(({ finish }) => finish === 'filled')).toBe(true)
    expect(wordsOfAll(sheetsOf(laid))).toContain('Nothing to fill')
  })

  it('prints the maker’s note with the list, and names a piece that is laid in', () => {
    expect(wordsOf(sheetsOf(sheetPlan({ plan: { note: 'Mind the iron.\nBlade 60 teeth.' } }))[1]!)).toMatch(
      /Note\nMind the iron\.\nBlade 60 teeth\./,
    )
  })

  it('prints nothing while the table is not laid', () => {
    expect(sheetsOf(sheetPlan({ option: { footprint: null } }))).toEqual([])
  })
})

describe('the sheets as things to be read', () => {
  const laid = (xMm: number, yMm: number, angleRad: number) => ({
    footprint: { slabId: 'slab', pose: { xMm, yMm, angleRad, turnedOver: false } },
  })
  const size = (lengthMm: number, widthMm: number) => {
    const { table } = sheetPlan().option
    return { table: { ...table, outline: { kind: 'rectangle', lengthMm, widthMm } as const } }
  }
  const manyCuts = sheetPlan({
    option: {
      pieces: [{ id: 'rest', name: 'rest', slabId: 'slab', anchor: slabPoint(1950, 100) }],
      cuts: [
        ...sheetPlan().option.cuts,
        ...Array.from({ length: 7 }, (_, k) => ({
          kind: 'line' as const,
          id: `line${k}`,
          pieceId: 'rest',
          from: slabPoint(1800, 700 - 80 * k),
          to: slabPoint(2100, 700 - 80 * k),
          kerfMm: 3,
          wasteSide: 'right' as const,
        })),
      ],
    },
  })
  const CASES = {
    'the plain job': sheetPlan(),
    'a turned table': sheetPlan({ option: laid(-40, -120, 0.02) }),
    'a table across the slab': sheetPlan({ option: { ...laid(1500, -300, 1.6), ...size(1400, 700) } }),
    'a small table': sheetPlan({ option: { ...laid(300, 100, 0.3), ...size(400, 250) } }),
    'a table beside the slab': sheetPlan({ option: laid(5000, 5000, 0) }),
    'a table larger than the slab': sheetPlan({ option: { ...laid(-400, -600, 0), ...size(3000, 1700) } }),
    'names of 200 letters': sheetPlan({
      plan: { name: LONG_NAME },
      option: { name: LONG_NAME },
      slab: {
        name: LONG_NAME,
        marks: sheetPlan().slab.marks.map((mark) => ({ ...mark, name: `${mark.id} ${LONG_NAME.slice(4)}` })),
      },
    }),
    'names in other scripts and with markup': sheetPlan({
      plan: { name: '<b>板 &amp; 表</b>' },
      slab: { name: 'Плита 3 🌳' },
    }),
    'a slab by stations': sheetPlan({
      slab: {
        marks: [],
        tapedDistances: [],
        capture: {
          kind: 'stations',
          stations: [
            { alongMm: 0, leftMm: 420, rightMm: 400 },
            { alongMm: 900, leftMm: 460, rightMm: 380 },
            { alongMm: 2400, leftMm: 400, rightMm: 450 },
          ],
        },
      },
      option: laid(200, -400, 0),
    }),
    'more cuts than the drawing can letter': manyCuts,
    'a note over pages': sheetPlan({ plan: { note: `${LONG_NAME}\n`.repeat(19).slice(0, 4000) } }),
    'an oval table': sheetPlan({
      option: {
        table: {
          ...sheetPlan().option.table,
          outline: { kind: 'oval', lengthMm: 1900, widthMm: 800 },
        },
      },
    }),
    'a live edge kept': sheetPlan({
      option: {
        table: {
          ...sheetPlan().option.table,
          sides: { ...sheetPlan().option.table.sides, near: { finish: 'live', oversizeMm: 0 } },
        },
      },
    }),
    'an offcut laid into the notch': sheetPlan({
      option: {
        pieces: [{ id: 'strip', name: 'strip', slabId: 'slab', anchor: slabPoint(900, -130) }],
        // The far strip, 1910 × 42 mm, moved down to the near side of the blank.
        placements: [
          {
            id: 'laid',
            pieceId: 'strip',
            pose: { xMm: 50, yMm: 905, angleRad: 0, turnedOver: false },
          },
        ],
      },
    }),
  }

  it.each(Object.entries(CASES))('SHT-8 nothing is clipped, overlapped or crossed: %s', (_, job) => {
    for (const paper of PAPERS) {
      for (const display of [MM, INCH]) {
        const sheets = sheetsOf(job, { paper, display })
        expect(sheets.length).toBeGreaterThan(0)
        expect(problemsOf(sheets)).toEqual([])
      }
    }
  })

  it('SHT-8 holds for 40 random legal plans (seeds 1 to 40), on A4 and Letter, in mm and inches', () => {
    let jobs = 0
    for (let seed = 1; seed <= 40; seed++) {
      const plan = randomPlan(seed)
      for (const option of plan.options) {
        const slab = plan.slabs.find(({ id }) => id === option.footprint?.slabId)
        if (slab === undefined) continue
        for (const more of [
          { paper: 'a4', display: MM } as const,
          { paper: 'letter', display: INCH } as const,
        ]) {
          const sheets = sheetsOf({ plan, option, slab }, more)
          if (sheets.length > 0) jobs++
          expect({ seed, problems: problemsOf(sheets) }).toEqual({ seed, problems: [] })
        }
      }
    }
    expect(jobs).toBeGreaterThan(60)
  })

  it('SHT-8 leaves the stations to the list when they are too many to letter, and says so', () => {
    const [first, list] = sheetsOf(manyCuts)
    expect(wordsOf(first!)).toContain('their stations are in the cut list')
    expect(wordsOf(first!)).not.toContain('at 1855 mm')
    expect(wordsOf(first!).split('\n')).toContain('11b')
    expect(wordsOf(list!)).toContain('1855 mm')
  })

  it('SHT-8 would notice a sheet that is spoilt', () => {
    const spoilt = sheetsOf().map((sheet) => ({
      ...sheet,
      items: sheet.items.map((item) =>
        item.kind === 'text' ? { ...item, sizeMm: item.sizeMm * 1.6 } : item,
      ),
    }))
    for (const sheet of spoilt) {
      expect(sheetProblems(sheet).map(({ kind }) => kind)).toEqual(
        expect.arrayContaining(['texts-overlap', 'text-wider-than-its-room']),
      )
    }
  })
})

describe('verdictText', () => {
  const CASES: readonly (readonly [Verdict, string])[] = [
    [{ kind: 'covers', spareMm: 14 }, 'with 14 mm to spare'],
    [{ kind: 'covers', spareMm: null }, 'the live edge is kept'],
    [{ kind: 'covers-with-voids', spareMm: 14, voids: 2, voidAreaMm2: 12_345 }, 'voids to fill: 2'],
    [
      { kind: 'needs-fill', voids: 0, edgeGapAreaMm2: 1, filledShare: 0.047, worstSide: 'near', depthMm: 88 },
      `88 mm (near side): resin makes up ${formatPercent(0.047)}`,
    ],
    [{ kind: 'short', side: 'start', depthMm: 44, lengthMm: 300 }, 'Not covered: at the start'],
    [{ kind: 'off-slab' }, 'does not lie on the slab'],
  ]

  const said = (verdict: Verdict, display: LengthDisplay, marginSdMm: number | null = null): string =>
    verdictText({
      verdict,
      display,
      text: sheetText,
      optionSure: { marginSdMm, coverChance: null, woodAreaSdMm2: 0, resinSdLitres: null },
    }).replaceAll('\u00a0', ' ')

  it.each(CASES)('SHT-2 says it in words with its figure: %o', (verdict, words) => {
    expect(said(verdict, MM)).toContain(words)
  })

  it('SHT-2 says how sure the margin is', () => {
    expect(said({ kind: 'covers', spareMm: 14 }, MM, 2.6)).toContain('with 14 mm ± 6 mm to spare')
    const verdict = { kind: 'short', side: 'far', depthMm: 44, lengthMm: 300 } as const
    expect(said(verdict, MM, 2.6)).toContain('up to 44 mm ± 6 mm over 300 mm')
  })

  it('SHT-2 speaks in the maker’s units', () => {
    const short = said({ kind: 'short', side: 'far', depthMm: 25.4, lengthMm: 609.6 }, INCH)
    expect(short).toContain('up to 1″ over 2′ 0″')
    expect(formatLength(25.4, INCH)).toBe('1″')
  })
})
