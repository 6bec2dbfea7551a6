import { describe, expect, it } from 'vitest'
import {
  blankPhotoSlab,
  blankPlan,
  type Issue,
  ISSUE_CODES,
  type OptionResult,
  type Plan,
  type PlanResult,
  type SlabResult,
} from '../../core/plan'
import { isAnswerDoubted, stageMarks } from './stageMarks'
import { STAGE_NAMES } from './stageNames'
import { stageOfIssue } from './stageOfIssue'

const blocked = { state: 'blocked', because: [] } as const
const ready = { state: 'ready', value: {} } as const

const photo = {
  id: 'p1',
  hash: '0'.repeat(64),
  fileName: 'slab.jpg',
  mediaType: 'image/jpeg',
  widthPx: 3000,
  heightPx: 2000,
  focalLength35mm: null,
  face: 'top',
  observations: [],
  straightLines: [],
} as const

const empty = blankPlan('plan', 'o1')
const withSlab: Plan = { ...empty, slabs: [blankPhotoSlab('s1', 'Slab 1', photo, 52)] }

type PartStates = Readonly<Record<'scale' | 'shape' | 'footprint' | 'pieces' | 'coverage' | 'resin', boolean>>

/** Only whether a part is ready matters to the marks, so the values may be empty. */
function resultWith(states: Partial<PartStates>, issues: readonly Issue[] = []): PlanResult {
  const part = (name: keyof PartStates) => (states[name] === true ? ready : blocked)
  const slab = { slabId: 's1', scale: part('scale'), shape: part('shape') } as unknown as SlabResult
  const option = {
    optionId: 'o1',
    footprint: part('footprint'),
    pieces: part('pieces'),
    coverage: part('coverage'),
    verdict: part('coverage'),
    resin: part('resin'),
    pour: part('resin'),
    buildTask: part('resin'),
  } as unknown as OptionResult
  return { slabs: new Map([['s1', slab]]), options: new Map([['o1', option]]), issues }
}

const ALL_READY = { scale: true, shape: true, footprint: true, pieces: true, coverage: true, resin: true }

const issue = (code: Issue['code'], severity: Issue['severity'], at: readonly string[]): Issue => ({
  id: code,
  code,
  severity,
  at,
  values: {},
})

const marksFor = (plan: Plan, result: PlanResult) =>
  stageMarks({ plan, result, slabId: plan.slabs[0]?.id ?? null, optionId: 'o1' })

describe('stageMarks', () => {
  it('asks for everything while there is no photo', () => {
    const marks = marksFor(empty, { slabs: new Map(), options: new Map(), issues: [] })
    expect(new Set(Object.values(marks))).toEqual(new Set(['needs']))
  })

  it('marks the photo done once there is one, and nothing after it', () => {
    const marks = marksFor(withSlab, resultWith({}))
    expect(marks.photo).toBe('done')
    expect(marks.scale).toBe('needs')
    expect(marks.paper).toBe('needs')
  })

  it('marks everything done, or worked out, when every part is ready and nothing is doubted', () => {
    const marks = marksFor(withSlab, resultWith(ALL_READY))
    const workedOut = STAGE_NAMES.filter((stage) => marks[stage] === 'ready')
    expect(workedOut).toEqual(['cuts', 'form', 'price', 'paper'])
    expect(STAGE_NAMES.filter((stage) => marks[stage] === 'done')).toHaveLength(STAGE_NAMES.length - 4)
  })

  it('doubts everything that hangs on a size in doubt, and on a piece that lies on wood', () => {
    const size = issue('distance-disagrees', 'warning', ['slabs', 's1', 'tapedDistances', 'd1'])
    const overlap = issue('pieces-overlap', 'warning', ['options', 'o1', 'placements', 'p1', 'table'])
    for (const doubt of [size, overlap]) {
      const result = resultWith(ALL_READY, [doubt])
      const marks = marksFor(withSlab, result)
      expect([marks.table, marks.cuts, marks.paper]).toEqual(['doubtful', 'doubtful', 'doubtful'])
      expect(isAnswerDoubted({ plan: withSlab, result, slabId: 's1', optionId: 'o1' })).toBe(true)
    }
  })

  it('marks the stage of a warning doubtful, and paper with it', () => {
    const warning = issue('distance-disagrees', 'warning', ['slabs', 's1', 'tapedDistances', 'd1'])
    const marks = marksFor(withSlab, resultWith(ALL_READY, [warning]))
    expect(marks.scale).toBe('doubtful')
    expect(marks.trace).toBe('done')
    expect(marks.paper).toBe('doubtful')
  })

  it('asks for something where there is a blocker, though the part itself is ready', () => {
    const blocker = issue('cut-piece-unknown', 'blocker', ['options', 'o1', 'cuts', 'c1'])
    expect(marksFor(withSlab, resultWith(ALL_READY, [blocker])).cuts).toBe('needs')
  })

  it('asks for the photo’s slab to be measured, though cuts and coverage stand', () => {
    const missing = issue('slab-thickness-missing', 'blocker', ['slabs', 's1', 'thicknessMm'])
    const marks = marksFor(withSlab, resultWith({ ...ALL_READY, resin: false }, [missing]))
    expect([marks.photo, marks.cuts, marks.paper]).toEqual(['needs', 'ready', 'doubtful'])
  })

  it('does not mind a note, nor what concerns another slab', () => {
    const note = issue('table-thin-allowance', 'note', ['options', 'o1'])
    const elsewhere = issue('outline-missing', 'blocker', ['slabs', 's2'])
    const marks = marksFor(withSlab, resultWith(ALL_READY, [note, elsewhere]))
    expect(marks.table).toBe('done')
    expect(marks.trace).toBe('done')
  })

  it('doubts a table that the slab does not cover', () => {
    const result = resultWith(ALL_READY)
    const option = result.options.get('o1')
    if (option === undefined) throw new Error('no option')
    const short = { kind: 'short', side: 'far', depthMm: 20, lengthMm: 300 } as const
    const options = new Map([['o1', { ...option, verdict: { state: 'ready', value: short } as const }]])
    expect(marksFor(withSlab, { ...result, options }).table).toBe('doubtful')
  })

  it('doubts the pour while it is worked out, and is content where there is nothing to pour', () => {
    const result = resultWith(ALL_READY)
    const option = result.options.get('o1')
    if (option === undefined) throw new Error('no option')
    const withPour = (pour: OptionResult['pour']) =>
      marksFor(withSlab, { ...result, options: new Map([['o1', { ...option, pour }]]) }).pour
    expect(withPour({ state: 'pending' })).toBe('doubtful')
    expect(withPour({ state: 'blocked', because: ['pour-nothing-to-fill/options/o1/pour'] })).toBe('done')
    expect(withPour({ state: 'blocked', because: ['outline-missing/slabs/s1'] })).toBe('needs')
  })

  it('asks for cuts while the table is not laid', () => {
    const marks = marksFor(withSlab, resultWith({ ...ALL_READY, footprint: false }))
    expect(marks.table).toBe('needs')
    expect(marks.cuts).toBe('needs')
  })
})

describe('stageOfIssue', () => {
  it.each([
    ['scale-no-photo', 'photo'],
    ['scale-datum-missing', 'scale'],
    ['marks-too-few', 'scale'],
    ['tilt-too-steep', 'scale'],
    ['void-deeper-than-slab', 'trace'],
    ['table-not-laid', 'table'],
    ['piece-anchor-lost', 'cuts'],
    ['resin-cast-below-finished', 'cuts'],
    ['resin-colder-than-sheet', 'pour'],
    ['piece-floats', 'pour'],
    ['pour-nothing-to-fill', 'pour'],
    ['build-door', 'form'],
    ['build-step-early', 'price'],
  ] as const)('sends %s to the stage %s', (code, stage) => {
    expect(stageOfIssue(code)).toBe(stage)
  })

  it('knows the subject of every issue that is not about the size', () => {
    const elsewhere = ISSUE_CODES.filter((code) => !code.startsWith('scale-'))
    expect(elsewhere.length).toBeGreaterThan(20)
    expect(elsewhere.filter((code) => stageOfIssue(code) === 'scale')).toEqual([])
  })
})
