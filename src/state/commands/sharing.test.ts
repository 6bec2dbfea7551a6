import { describe, expect, it, vi } from 'vitest'
import { pxPoint, slabPoint } from '../../core/geometry'
import { frozenPlan } from '../../../tests/support/frozenPlan'
import { en, type Plan, planSchema } from '../../core/plan'
import type { Command } from '../command'
import * as commands from '.'

// The state has nothing to do with React: it must work where there is none.
vi.mock('react', () => ({}))

const POSE = { xMm: 5, yMm: 6, angleRad: 0.1, turnedOver: true }
const HASH = 'ab'.repeat(32)
const PHOTO = {
  id: 'new-photo',
  hash: HASH,
  fileName: 'new.jpg',
  mediaType: 'image/jpeg',
  widthPx: 4000,
  heightPx: 3000,
  focalLength35mm: null,
  face: 'top',
} as const

const NO_REGION = { outer: [], holes: [] }
const FILL_PIECE = {
  offcutKey: 'some-offcut',
  anchor: slabPoint(10, 10),
  pose: POSE,
  onSlab: NO_REGION,
  onTable: NO_REGION,
  areaMm2: 1,
  leastJointMm: 8,
}
const FILL_CUT = {
  line: { from: slabPoint(0, 0), to: slabPoint(100, 0) },
  kerfMm: 3,
  wasteSide: 'left',
} as const

const PLAN = frozenPlan()

type Path = readonly string[]

/** The smallest places that differ: values, or items that came or went in a list. */
function changedPaths(before: unknown, after: unknown, path: Path = []): readonly Path[] {
  if (Object.is(before, after)) return []
  const areBoth = [before, after].every((value) => typeof value === 'object' && value !== null)
  if (!areBoth || Array.isArray(before) !== Array.isArray(after)) return [path]
  const [left, right] = [new Map(entriesOf(before)), new Map(entriesOf(after))]
  return [...new Set([...left.keys(), ...right.keys()])].flatMap((key) =>
    left.has(key) && right.has(key)
      ? changedPaths(left.get(key), right.get(key), [...path, key])
      : [[...path, key]],
  )
}

/** Items of a list by id where they have one, so that one taken out does not look like a change of all after it. */
const entriesOf = (value: unknown): [string, unknown][] =>
  Array.isArray(value)
    ? value.map((item: unknown, index): [string, unknown] => [keyOf(item) ?? String(index), item])
    : Object.entries(Object(value))

const keyOf = (item: unknown): string | null => {
  if (typeof item !== 'object' || item === null) return null
  if ('id' in item) return String(item.id)
  return 'markId' in item ? String(item.markId) : null
}

/** Objects that say the same before and after must be the same object: steps of undo share them. */
function unsharedPaths(before: unknown, after: unknown, path: Path = []): readonly Path[] {
  if (Object.is(before, after) || typeof before !== 'object' || typeof after !== 'object') return []
  if (before === null || after === null) return []
  if (changedDeep(before, after).length === 0) return [path]
  const left = new Map(entriesOf(before))
  return entriesOf(after).flatMap(([key, value]) =>
    left.has(key) ? unsharedPaths(left.get(key), value, [...path, key]) : [],
  )
}

const changedDeep = (before: unknown, after: unknown): readonly Path[] =>
  JSON.stringify(before) === JSON.stringify(after) ? [] : changedPaths(before, after)

interface Case {
  readonly command: Command<never>
  readonly after: Plan
  readonly again: () => Plan
  /** What may have changed, as `slabs.s1.name`. */
  readonly changes: readonly string[]
}

const does = <Args>(command: Command<Args>, args: Args, ...changes: string[]): Case => ({
  command,
  after: command.apply(PLAN, args),
  again: () => command.apply(command.apply(PLAN, args), args),
  changes,
})

const S1 = { slabId: 's1' }
const P1 = { slabId: 's1', photoId: 'p1' }
const O1 = { optionId: 'o1' }
const at = pxPoint(11, 12)

const CASES: readonly Case[] = [
  does(commands.addPhotoSlab, { slabId: 'n', photo: PHOTO }, 'slabs.n'),
  does(commands.addStationSlab, { slabId: 'n', thicknessMm: 60 }, 'slabs.n'),
  does(commands.renameSlab, { ...S1, name: 'Best' }, 'slabs.s1.name'),
  does(commands.setSlabFacts, { ...S1, facts: { thicknessMm: 61 } }, 'slabs.s1.thicknessMm'),
  does(
    commands.removeSlab,
    S1,
    'slabs.s1',
    'options.o1.footprint',
    'options.o1.pieces.p',
    'options.o1.placements.pl',
    'options.o1.cuts.extra',
  ),
  does(commands.addLaterPhoto, { ...S1, photo: PHOTO }, 'slabs.s1.capture.photos.new-photo'),
  does(
    commands.setPhotoFace,
    { slabId: 's1', photoId: 'p2', face: 'underside' },
    'slabs.s1.capture.photos.p2.face',
  ),
  does(commands.removeLaterPhoto, { slabId: 's1', photoId: 'p2' }, 'slabs.s1.capture.photos.p2'),
  does(commands.unplaceMark, { ...P1, markId: 'a' }, 'slabs.s1.capture.photos.p1.observations.a'),
  does(
    commands.replacePhoto,
    { ...S1, photo: PHOTO },
    'slabs.s1.capture.photos.p1',
    'slabs.s1.capture.photos.p2',
    'slabs.s1.capture.photos.new-photo',
    'slabs.s1.capture.datum',
    'slabs.s1.capture.traces.t1',
    'slabs.s1.capture.traces.t2',
    'slabs.s1.capture.traces.t3',
    'slabs.s1.capture.traces.t4',
    'slabs.s1.capture.traces.t5',
    'slabs.s1.capture.traces.t6',
    'slabs.s1.capture.traces.t7',
  ),
  does(
    commands.setStations,
    { slabId: 's2', stations: [{ alongMm: 0, leftMm: -400, rightMm: 380 }] },
    'slabs.s2.capture.stations.1',
    'slabs.s2.capture.stations.2',
  ),
  does(
    commands.placeMark,
    { ...P1, markId: 'e', atPx: at },
    'slabs.s1.marks.e',
    'slabs.s1.capture.photos.p1.observations.e',
  ),
  does(
    commands.moveMark,
    { ...P1, markId: 'a', atPx: at, sdPx: 2 },
    'slabs.s1.capture.photos.p1.observations.a.atPx.0',
    'slabs.s1.capture.photos.p1.observations.a.atPx.1',
    'slabs.s1.capture.photos.p1.observations.a.sdPx',
  ),
  does(commands.renameMark, { ...S1, markId: 'a', name: 'Z' }, 'slabs.s1.marks.a.name'),
  does(commands.setMarkHeight, { ...S1, markId: 'a', heightMm: 3 }, 'slabs.s1.marks.a.heightMm'),
  does(
    commands.removeMark,
    { ...S1, markId: 'a' },
    'slabs.s1.marks.a',
    'slabs.s1.tapedDistances.ab',
    'slabs.s1.tapedDistances.da',
    'slabs.s1.tapedDistances.ac',
    'slabs.s1.capture.photos.p1.observations.a',
  ),
  does(
    commands.setTapedDistance,
    { ...S1, distanceId: 'ab', markIds: ['a', 'b'], lengthMm: 1801 },
    'slabs.s1.tapedDistances.ab.lengthMm',
  ),
  does(
    commands.setTapedDistance,
    { ...S1, distanceId: 'bd', markIds: ['b', 'd'], lengthMm: 1899 },
    'slabs.s1.tapedDistances.bd',
  ),
  does(
    commands.layBoard,
    {
      ...P1,
      boardId: 'nb',
      markIds: ['n1', 'n2', 'n3', 'n4'],
      cornersPx: [pxPoint(0, 0), pxPoint(9, 0), pxPoint(9, 5), pxPoint(0, 5)],
      lengthMm: 900,
      widthMm: 500,
      thicknessMm: 6,
      name: 'Ply',
    },
    'slabs.s1.boards.nb',
    ...['n1', 'n2', 'n3', 'n4'].flatMap((id) => [
      `slabs.s1.marks.${id}`,
      `slabs.s1.capture.photos.p1.observations.${id}`,
    ]),
  ),
  does(
    commands.setBoard,
    { ...S1, boardId: 'board', widthMm: 510, thicknessMm: 19 },
    'slabs.s1.boards.board.widthMm',
    ...['k1', 'k2', 'k3', 'k4'].map((id) => `slabs.s1.marks.${id}.heightMm`),
  ),
  does(
    commands.removeBoard,
    { ...S1, boardId: 'board' },
    'slabs.s1.boards.board',
    ...['k1', 'k2', 'k3', 'k4'].flatMap((id) => [
      `slabs.s1.marks.${id}`,
      `slabs.s1.capture.photos.p1.observations.${id}`,
    ]),
  ),
  does(
    commands.layRule,
    {
      ...P1,
      ruleId: 'nr',
      markIds: ['n1', 'n2'],
      endsPx: [pxPoint(0, 0), pxPoint(9, 0)],
      lengthMm: 900,
      thicknessMm: 1,
      name: 'Rule 2',
    },
    'slabs.s1.rules.nr',
    ...['n1', 'n2'].flatMap((id) => [
      `slabs.s1.marks.${id}`,
      `slabs.s1.capture.photos.p1.observations.${id}`,
    ]),
  ),
  does(
    commands.setRule,
    { ...S1, ruleId: 'rule1', lengthMm: 1001, thicknessMm: 2 },
    'slabs.s1.rules.rule1.lengthMm',
    'slabs.s1.marks.r1.heightMm',
    'slabs.s1.marks.r2.heightMm',
  ),
  does(
    commands.removeRule,
    { ...S1, ruleId: 'rule1' },
    'slabs.s1.rules.rule1',
    ...['r1', 'r2'].flatMap((id) => [
      `slabs.s1.marks.${id}`,
      `slabs.s1.capture.photos.p1.observations.${id}`,
    ]),
  ),
  does(
    commands.addStraightLine,
    { ...P1, lineId: 'l2', pointsPx: [at, pxPoint(9, 9), pxPoint(50, 50)], sdPx: 2 },
    'slabs.s1.capture.photos.p1.straightLines.l2',
  ),
  does(
    commands.moveLinePoint,
    { ...P1, lineId: 'l1', index: 1, atPx: pxPoint(2000, 1303) },
    'slabs.s1.capture.photos.p1.straightLines.l1.pointsPx.1.1',
  ),
  does(commands.removeStraightLine, { ...P1, lineId: 'l1' }, 'slabs.s1.capture.photos.p1.straightLines.l1'),
  does(
    commands.settleClicks,
    {
      ...P1,
      marks: [
        {
          markId: 'a',
          clickPx: pxPoint(600.5, 900),
          found: { kind: 'refined', px: pxPoint(601, 900), sdPx: 0.3 },
        },
        // It has moved on since it was looked at.
        { markId: 'k1', clickPx: pxPoint(1, 1), found: { kind: 'unsure' } },
      ],
    },
    'slabs.s1.capture.photos.p1.observations.a.atPx.0',
    'slabs.s1.capture.photos.p1.observations.a.sdPx',
    'slabs.s1.capture.photos.p1.observations.a.refinement.kind',
    'slabs.s1.capture.photos.p1.observations.a.refinement.clickPx',
    'slabs.s1.capture.photos.p1.observations.a.refinement.clickSdPx',
  ),
  does(
    commands.settleLine,
    {
      ...P1,
      lineId: 'l1',
      clicksPx: [pxPoint(500, 1300), pxPoint(2000, 1302), pxPoint(3500, 1300)],
      pointsPx: [pxPoint(500, 1300), pxPoint(2000, 1301), pxPoint(3500, 1300)],
      sdPx: 0.25,
    },
    'slabs.s1.capture.photos.p1.straightLines.l1.pointsPx.1.1',
    'slabs.s1.capture.photos.p1.straightLines.l1.sdPx',
  ),
  does(
    commands.keepClick,
    { ...P1, markId: 'b', isKept: true },
    'slabs.s1.capture.photos.p1.observations.b.atPx.0',
    'slabs.s1.capture.photos.p1.observations.b.atPx.1',
    'slabs.s1.capture.photos.p1.observations.b.sdPx',
    'slabs.s1.capture.photos.p1.observations.b.refinement.kind',
    'slabs.s1.capture.photos.p1.observations.b.refinement.clickPx',
    'slabs.s1.capture.photos.p1.observations.b.refinement.clickSdPx',
  ),
  does(
    commands.setFlatness,
    { ...S1, flatness: { kind: 'unknown' } },
    'slabs.s1.flatness.kind',
    'slabs.s1.flatness.bowMm',
    'slabs.s1.flatness.twistMm',
    'slabs.s1.flatness.readingSdMm',
  ),
  does(
    commands.setDatum,
    { ...P1, fromPx: at, toPx: pxPoint(2400, 900.25) },
    'slabs.s1.capture.datum.fromPx.0',
    'slabs.s1.capture.datum.fromPx.1',
  ),
  does(
    commands.addTrace,
    { ...P1, traceId: 'n', meaning: { kind: 'outline' }, ringPx: [at, at, at] },
    'slabs.s1.capture.traces.n',
  ),
  does(
    commands.setOutline,
    {
      ...P1,
      traceId: 'n',
      ringPx: [pxPoint(400, 750), pxPoint(2600, 760), at],
      origin: { kind: 'follow', method: 'm' },
    },
    'slabs.s1.capture.traces.t1.ringPx.2.0',
    'slabs.s1.capture.traces.t1.ringPx.2.1',
    'slabs.s1.capture.traces.t1.ringPx.3',
    'slabs.s1.capture.traces.t1.origin.kind',
    'slabs.s1.capture.traces.t1.origin.method',
  ),
  does(
    commands.replaceTraceRing,
    { ...S1, traceId: 't1', ringPx: [pxPoint(400, 750), pxPoint(2600, 760), at] },
    'slabs.s1.capture.traces.t1.ringPx.2.0',
    'slabs.s1.capture.traces.t1.ringPx.2.1',
    'slabs.s1.capture.traces.t1.ringPx.3',
  ),
  does(
    commands.moveTracePoint,
    { ...S1, traceId: 't1', index: 1, atPx: pxPoint(2600, 761) },
    'slabs.s1.capture.traces.t1.ringPx.1.1',
  ),
  does(
    commands.insertTracePoint,
    { ...S1, traceId: 't1', index: 4, atPx: at },
    'slabs.s1.capture.traces.t1.ringPx.4',
  ),
  does(commands.deleteTracePoint, { ...S1, traceId: 't1', index: 3 }, 'slabs.s1.capture.traces.t1.ringPx.3'),
  does(
    commands.setTraceMeaning,
    { ...S1, traceId: 't3', meaning: { kind: 'void', depth: { kind: 'partial', depthMm: 15 } } },
    'slabs.s1.capture.traces.t3.meaning.depth.depthMm',
  ),
  does(commands.removeTrace, { ...S1, traceId: 't2' }, 'slabs.s1.capture.traces.t2'),
  does(commands.addOption, { optionId: 'n', copyOf: null }, 'options.n'),
  does(commands.addOption, { optionId: 'n', copyOf: 'o1', name: 'Longer' }, 'options.n'),
  does(commands.renameOption, { ...O1, name: 'Long' }, 'options.o1.name'),
  does(commands.removeOption, O1, 'options.o1'),
  does(
    commands.setTableOutline,
    { ...O1, outline: { kind: 'rectangle', lengthMm: 1710, widthMm: 750 } },
    'options.o1.table.outline.lengthMm',
  ),
  does(commands.setTableThickness, { ...O1, thicknessMm: 41 }, 'options.o1.table.thicknessMm'),
  does(commands.setTableSide, { ...O1, side: 'far', finish: 'filled' }, 'options.o1.table.sides.far.finish'),
  does(
    commands.layFootprint,
    { ...O1, slabId: 's2', pose: POSE },
    'options.o1.footprint.slabId',
    ...['xMm', 'yMm', 'angleRad', 'turnedOver'].map((key) => `options.o1.footprint.pose.${key}`),
  ),
  does(
    commands.takeTable,
    { ...O1, slabId: 's2', outline: { kind: 'rectangle', lengthMm: 1710, widthMm: 750 }, pose: POSE },
    'options.o1.table.outline.lengthMm',
    'options.o1.footprint.slabId',
    ...['xMm', 'yMm', 'angleRad', 'turnedOver'].map((key) => `options.o1.footprint.pose.${key}`),
  ),
  does(commands.setCoverWishes, { ...O1, cover: { voids: 'unwelcome' } }, 'options.o1.cover.voids'),
  does(commands.setSlabStock, { ...S1, stock: { flatteningMm: 9 } }, 'slabs.s1.stock.flatteningMm'),
  does(
    commands.addYardSlab,
    { slabId: 'n', name: 'Yard', facts: {}, tape: { lengthMm: 2000, narrowestMm: 800, widestMm: null } },
    'slabs.n',
  ),
  does(commands.liftFootprint, O1, 'options.o1.footprint'),
  does(
    commands.setKerf,
    { ...O1, kerfMm: 2.4 },
    ...['cut-start', 'cut-end', 'cut-far', 'cut-near'].map((id) => `options.o1.cuts.${id}.kerfMm`),
  ),
  does(
    commands.keepFill,
    {
      ...O1,
      slabId: 's1',
      pieces: [{ ...FILL_PIECE, cuts: [FILL_CUT] }],
      ids: ['fill-piece', 'fill-cut', 'fill-place'],
    },
    'options.o1.pieces.fill-piece',
    'options.o1.cuts.fill-cut',
    'options.o1.placements.fill-place',
  ),
  does(
    commands.addLineCut,
    {
      ...O1,
      cut: {
        kind: 'line',
        id: 'more',
        pieceId: 'p',
        from: slabPoint(0, 0),
        to: slabPoint(1, 1),
        kerfMm: 2,
        wasteSide: 'left',
      },
    },
    'options.o1.cuts.more',
  ),
  does(
    commands.setLineCut,
    { ...O1, cutId: 'extra', changes: { wasteSide: 'left' } },
    'options.o1.cuts.extra.wasteSide',
  ),
  does(commands.removeLineCut, { ...O1, cutId: 'extra' }, 'options.o1.cuts.extra'),
  does(
    commands.pickPiece,
    { ...O1, pieceId: 'n', name: 'Corner', slabId: 's1', anchor: slabPoint(1, 2) },
    'options.o1.pieces.n',
  ),
  does(commands.renamePiece, { ...O1, pieceId: 'p', name: 'Strip' }, 'options.o1.pieces.p.name'),
  does(
    commands.dropPiece,
    { ...O1, pieceId: 'p' },
    'options.o1.pieces.p',
    'options.o1.placements.pl',
    'options.o1.cuts.extra',
  ),
  does(commands.placePiece, { ...O1, placementId: 'n', pieceId: 'p', pose: POSE }, 'options.o1.placements.n'),
  does(
    commands.layPiece,
    {
      ...O1,
      placementId: 'n',
      slabId: 's1',
      piece: { id: 'q', name: 'Q', anchor: slabPoint(3, 4) },
      pose: POSE,
    },
    'options.o1.pieces.q',
    'options.o1.placements.n',
  ),
  does(
    commands.movePlacement,
    { ...O1, placementId: 'pl', pose: { xMm: 10, yMm: 700, angleRad: -3, turnedOver: true } },
    'options.o1.placements.pl.pose.angleRad',
  ),
  does(commands.removePlacement, { ...O1, placementId: 'pl' }, 'options.o1.placements.pl'),
  does(commands.setResin, { ...O1, resin: { castThicknessMm: null } }, 'options.o1.resin.castThicknessMm'),
  does(commands.setSlabWood, { ...S1, wood: { passMm: 3 } }, 'slabs.s1.wood.passMm'),
  does(commands.setRoom, { ...O1, room: { roomC: 19 } }, 'options.o1.room.roomC'),
  does(commands.setForm, { ...O1, form: { backingMm: 90 } }, 'options.o1.form.backingMm'),
  does(commands.setStanding, { ...O1, standing: { placeMm: 640 } }, 'options.o1.standing.placeMm'),
  does(commands.setCosts, { ...O1, costs: { keys: 5 } }, 'options.o1.quote.keys'),
  does(commands.setShop, { shop: { currency: 'CHF' } }, 'shop.currency'),
  does(
    commands.addLongerOption,
    { optionId: 'longer', copyOf: 'o1', name: 'Longer', byMm: 200 },
    'options.longer',
  ),
  does(commands.setLeastJoint, { ...O1, leastJointMm: 8 }, 'options.o1.leastJointMm'),
  does(commands.renamePlan, { name: 'Desk' }, 'name'),
  does(commands.goBackTo, { version: { ...PLAN, id: 'other', name: 'Desk' } }, 'name'),
  does(commands.setPlanNote, { note: 'oil twice' }, 'note'),
]

/** What a command is given whole, and so cannot share. */
const GIVEN = new Set(['datum', 'ringPx', 'stations', 'markIds', 'endIds', 'pointsPx', 'refinement'])

const isCommand = (value: unknown): value is Command<never> =>
  typeof value === 'object' && value !== null && 'apply' in value

describe('commands', () => {
  it.each(CASES.map((entry) => [entry.command.name, entry] as const))(
    '%s changes just what it says and shares all the rest',
    (_, { after, changes }) => {
      expect(
        changedPaths(PLAN, after)
          .map((path) => path.join('.'))
          .toSorted(),
      ).toEqual(changes.toSorted())
      const unshared = unsharedPaths(PLAN, after).filter((path) => !path.some((key) => GIVEN.has(key)))
      expect(unshared).toEqual([])
      expect(planSchema.safeParse(after).error).toBeUndefined()
    },
  )

  it('are all tried here, and each has its name for the undo list', () => {
    const all = Object.values(commands).filter(isCommand)
    const tried = new Set(CASES.map(({ command }) => command.name))
    expect(all.map(({ name }) => name).filter((name) => !tried.has(name))).toEqual(['moveCutEarlier'])
    const labels = Object.keys(en).filter((key) => key.startsWith('command-'))
    expect(labels.toSorted()).toEqual(all.map(({ name }) => `command-${name}`).toSorted())
  })

  it('give back the very plan when asked for what is so already', () => {
    const same: readonly Plan[] = [
      commands.renameSlab.apply(PLAN, { ...S1, name: 'Slab 1' }),
      commands.setSlabFacts.apply(PLAN, { ...S1, facts: { thicknessMm: 52, species: 'ash' } }),
      commands.moveMark.apply(PLAN, { ...P1, markId: 'a', atPx: pxPoint(600.5, 900) }),
      commands.setTapedDistance.apply(PLAN, { ...S1, distanceId: 'ab', markIds: ['a', 'b'], lengthMm: 1800 }),
      commands.setBoard.apply(PLAN, { ...S1, boardId: 'board', thicknessMm: 18 }),
      commands.setTableSide.apply(PLAN, { ...O1, side: 'far', oversizeMm: 0 }),
      commands.moveCutEarlier.apply(PLAN, { ...O1, cutId: 'cut-start' }),
      commands.renamePlan.apply(PLAN, { name: PLAN.name }),
    ]
    for (const plan of same) expect(plan).toBe(PLAN)
    const once = commands.setKerf.apply(PLAN, { ...O1, kerfMm: 2 })
    expect(commands.setKerf.apply(once, { ...O1, kerfMm: 2 })).toBe(once)
  })
})
