import { describe, expect, it } from 'vitest'
import { frozenPlan } from '../../../tests/support/frozenPlan'
import { pxPoint, slabPoint } from '../../core/geometry'
import { type Plan } from '../../core/plan'
import { InvariantError } from '../../core/units'
import * as commands from '.'

const PLAN = frozenPlan()
const POSE = { xMm: 5, yMm: 6, angleRad: 0.1, turnedOver: true }
const PHOTO = {
  id: 'new-photo',
  hash: 'ab'.repeat(32),
  fileName: 'new.jpg',
  mediaType: 'image/jpeg',
  widthPx: 4000,
  heightPx: 3000,
  focalLength35mm: null,
  face: 'top',
} as const
const S1 = { slabId: 's1' }
const P1 = { slabId: 's1', photoId: 'p1' }
const O1 = { optionId: 'o1' }
const at = pxPoint(11, 12)

describe('commands', () => {
  it('throw InvariantError for ids that the plan does not hold', () => {
    const none = 'nobody'
    const calls: readonly (() => Plan)[] = [
      () => commands.renameSlab.apply(PLAN, { slabId: none, name: '' }),
      () => commands.removeSlab.apply(PLAN, { slabId: none }),
      () => commands.replacePhoto.apply(PLAN, { slabId: 's2', photo: PHOTO }),
      () => commands.setStations.apply(PLAN, { ...S1, stations: [] }),
      () => commands.placeMark.apply(PLAN, { ...S1, photoId: none, markId: 'x', atPx: at }),
      () => commands.placeMark.apply(PLAN, { ...P1, markId: 'a', atPx: at }),
      () => commands.moveMark.apply(PLAN, { slabId: 's1', photoId: 'p2', markId: 'a', atPx: at }),
      () => commands.removeMark.apply(PLAN, { ...S1, markId: none }),
      () =>
        commands.setTapedDistance.apply(PLAN, { ...S1, distanceId: 'n', markIds: ['a', none], lengthMm: 1 }),
      () =>
        commands.setTapedDistance.apply(PLAN, { ...S1, distanceId: 'n', markIds: ['a', 'a'], lengthMm: 1 }),
      () =>
        commands.setTapedDistance.apply(PLAN, {
          ...S1,
          distanceId: none,
          markIds: ['a', 'b'],
          lengthMm: null,
        }),
      () => commands.setBoard.apply(PLAN, { ...S1, boardId: none }),
      () => commands.setDatum.apply(PLAN, { ...S1, photoId: none, fromPx: at, toPx: at }),
      () => commands.addTrace.apply(PLAN, { ...P1, traceId: 't1', meaning: { kind: 'outline' }, ringPx: [] }),
      () => commands.moveTracePoint.apply(PLAN, { ...S1, traceId: 't1', index: 4, atPx: at }),
      () => commands.insertTracePoint.apply(PLAN, { ...S1, traceId: 't1', index: 5, atPx: at }),
      () => commands.deleteTracePoint.apply(PLAN, { ...S1, traceId: 't1', index: -1 }),
      () => commands.removeTrace.apply(PLAN, { ...S1, traceId: none }),
      () => commands.addOption.apply(PLAN, { optionId: 'o1', copyOf: null }),
      () => commands.addOption.apply(PLAN, { optionId: 'n', copyOf: none }),
      () => commands.removeOption.apply(PLAN, { optionId: none }),
      () => commands.layFootprint.apply(PLAN, { ...O1, slabId: none, pose: POSE }),
      () => commands.moveCutEarlier.apply(PLAN, { ...O1, cutId: none }),
      () => commands.removeLineCut.apply(PLAN, { ...O1, cutId: 'cut-far' }),
      () =>
        commands.pickPiece.apply(PLAN, {
          ...O1,
          pieceId: 'n',
          name: '',
          slabId: none,
          anchor: slabPoint(0, 0),
        }),
      () => commands.placePiece.apply(PLAN, { ...O1, placementId: 'n', pieceId: none, pose: POSE }),
      () => commands.movePlacement.apply(PLAN, { ...O1, placementId: none, pose: POSE }),
      () => commands.dropPiece.apply(PLAN, { ...O1, pieceId: none }),
      () => commands.setResin.apply(PLAN, { optionId: none, resin: {} }),
    ]
    for (const call of calls) expect(call).toThrow(InvariantError)
  })
})

describe('placeMark', () => {
  it('gives the first free letter, and after Z starts anew with a number', () => {
    const [slab] = PLAN.slabs
    if (slab === undefined) throw new Error('no slab')
    expect(commands.nextMarkName(slab)).toBe('E')
    const letters = Array.from({ length: 26 }, (_, n) => ({
      id: `m${n}`,
      name: String.fromCharCode(65 + n),
      heightMm: 0,
    }))
    expect(commands.nextMarkName({ ...slab, marks: letters })).toBe('A2')
    expect(commands.nextMarkName({ ...slab, marks: letters.filter(({ name }) => name !== 'C') })).toBe('C')
  })

  it('lays the datum through the first two marks, and leaves one that is there', () => {
    const empty = commands.addPhotoSlab.apply(PLAN, { slabId: 'n', photo: PHOTO })
    const place = (plan: Plan, markId: string, x: number): Plan =>
      commands.placeMark.apply(plan, {
        slabId: 'n',
        photoId: 'new-photo',
        markId,
        atPx: pxPoint(x, 7),
      })
    const datumOf = (plan: Plan): unknown => {
      const capture = plan.slabs.find(({ id }) => id === 'n')?.capture
      return capture?.kind === 'photo' ? capture.datum : undefined
    }
    const one = place(empty, 'x', 10)
    expect(datumOf(one)).toBeNull()
    const two = place(one, 'y', 90)
    expect(datumOf(two)).toEqual({ photoId: 'new-photo', fromPx: [10, 7], toPx: [90, 7] })
    expect(datumOf(place(two, 'z', 50))).toBe(datumOf(two))
  })
})

describe('setTapedDistance', () => {
  it('takes a distance away when its length is null', () => {
    const args = { ...S1, distanceId: 'ab', markIds: ['a', 'b'], lengthMm: null } as const
    const after = commands.setTapedDistance.apply(PLAN, args)
    const [before, kept] = [PLAN.slabs[0]?.tapedDistances ?? [], after.slabs[0]?.tapedDistances]
    expect(kept).toEqual(before.filter(({ id }) => id !== 'ab'))
    expect(kept?.[0]).toBe(before[1])
  })
})

describe('moveCutEarlier', () => {
  it('swaps a cut with the one before it and shares both', () => {
    const after = commands.moveCutEarlier.apply(PLAN, { ...O1, cutId: 'cut-far' })
    const [before, moved] = [PLAN.options[0]?.cuts ?? [], after.options[0]?.cuts ?? []]
    expect(moved.map(({ id }) => id)).toEqual(['cut-start', 'cut-far', 'cut-end', 'cut-near', 'extra'])
    expect(new Set(moved)).toEqual(new Set(before))
    expect(moved[1]).toBe(before[2])
  })
})

describe('layFootprint', () => {
  it('gives an option that has lost its footprint cuts the usual four', () => {
    const bare: Plan = {
      ...PLAN,
      options: PLAN.options.map((option) => ({ ...option, cuts: [] })),
    }
    const after = commands.layFootprint.apply(bare, { ...O1, slabId: 's1', pose: POSE })
    const sides = after.options[0]?.cuts.map((cut) => (cut.kind === 'footprint' ? cut.side : null))
    expect(sides).toEqual(['start', 'end', 'far', 'near'])
  })
})
