import { describe, expect, it } from 'vitest'
import { flatOption, flatPlan, flatPx, flatSlab } from '../../../tests/support/flatPlan'
import { frozenPlan } from '../../../tests/support/frozenPlan'
import { seededRandom } from '../../../tests/support/seededRandom'
import { slabPoint } from '../geometry'
import { parsePlan, type ParsedPlan } from './parsePlan'
import type { Plan } from './schema'

const POSE = { xMm: 0, yMm: 0, angleRad: 0, turnedOver: false }

/** One slab with marks, distances, traces; one option with a piece laid and a line cut. */
function fullPlan(): Plan {
  const slab = flatSlab({
    outline: [flatPx(0, 0), flatPx(2000, 0), flatPx(2000, 900), flatPx(0, 900)],
    voids: [{ ring: [flatPx(500, 400), flatPx(600, 400), flatPx(600, 500)], depthMm: 20 }],
    thicknessMm: 50,
  })
  const option = {
    ...flatOption(1000, 500, { xMm: 100, yMm: 100, angleRad: 0 }),
    pieces: [{ id: 'p', name: 'End piece', slabId: slab.id, anchor: slabPoint(1900, 450) }],
    placements: [{ id: 'at-p', pieceId: 'p', pose: POSE }],
  }
  const line = {
    kind: 'line',
    id: 'extra',
    pieceId: 'p',
    from: slabPoint(1500, 0),
    to: slabPoint(1500, 900),
    kerfMm: 3,
    wasteSide: 'left',
  } as const
  return flatPlan(slab, { ...option, cuts: [...option.cuts, line] })
}

type Json = Record<string, unknown>

/** The plan as JSON with one place changed; `undefined` takes the key away. */
function edited(path: readonly (string | number)[], value: unknown, plan: Plan = fullPlan()): unknown {
  const json: unknown = JSON.parse(JSON.stringify(plan))
  const last = path.at(-1) ?? ''
  const parent = path.slice(0, -1).reduce<unknown>((at, key) => (at as Json)[key], json) as Json
  if (value === undefined) delete parent[last]
  else parent[last] = value
  return json
}

function parsed(json: unknown): ParsedPlan {
  const result = parsePlan(json)
  if (!result.ok) throw new Error(result.problem.code)
  return result.value
}

const lostCodes = (json: unknown): readonly string[] => parsed(json).lost.map(({ code }) => code)

const onlySlab = (plan: Plan): Plan['slabs'][number] => {
  const [slab] = plan.slabs
  if (slab === undefined) throw new Error('no slab')
  return slab
}

const onlyOption = (plan: Plan): Plan['options'][number] => {
  const [option] = plan.options
  if (option === undefined) throw new Error('no option')
  return option
}

const tracesOf = ({ capture }: Plan['slabs'][number]) => (capture.kind === 'photo' ? capture.traces : [])

describe('parsePlan', () => {
  it('PLN-8 gives a whole plan back as it was, with nothing lost', () => {
    const plan = fullPlan()
    expect(parsed(JSON.parse(JSON.stringify(plan)))).toEqual({ plan, lost: [] })
  })

  it.each([
    null,
    7,
    'waneline-plan',
    [],
    {},
    { format: 'something-else', version: 1 },
    { format: 'waneline-plan' },
    { format: 'waneline-plan', version: '1' },
    { format: 'waneline-plan', version: 0 },
    { format: 'waneline-plan', version: 1.5 },
    { format: 'waneline-plan', version: -3 },
  ])('PLN-7 refuses %j, which is no plan', (json) => {
    expect(parsePlan(json)).toEqual({ ok: false, problem: { code: 'plan-not-a-plan', values: {} } })
  })

  it('PLN-7 refuses a plan of a newer version and names both versions', () => {
    expect(parsePlan(edited(['version'], 99))).toEqual({
      ok: false,
      problem: { code: 'plan-newer-version', values: { version: 99, readable: 1 } },
    })
  })

  it('PLN-8 drops a broken mark and the distances to it, and names them', () => {
    const { plan, lost } = parsed(edited(['slabs', 0, 'marks', 0, 'heightMm'], 'high'))
    const before = onlySlab(fullPlan())
    const gone = before.marks[0]
    expect(onlySlab(plan).marks).toEqual(before.marks.slice(1))
    expect(onlySlab(plan).tapedDistances).toEqual(
      before.tapedDistances.filter(({ markIds }) => !markIds.includes(gone?.id ?? '')),
    )
    expect(lost[0]).toEqual({ code: 'lost-mark', values: { name: gone?.name, owner: before.name } })
    expect(lost.map(({ code }) => code)).toContain('lost-observation')
  })

  it('PLN-8 drops a broken distance and names the marks it lay between', () => {
    const { plan, lost } = parsed(edited(['slabs', 0, 'tapedDistances', 1, 'lengthMm'], -5))
    const before = onlySlab(fullPlan())
    const ends = before.tapedDistances[1]?.markIds.map((id) => before.marks.find((m) => m.id === id)?.name)
    expect(lost).toEqual([{ code: 'lost-distance', values: { name: ends?.join('–'), owner: before.name } }])
    expect(onlySlab(plan).tapedDistances).toHaveLength(before.tapedDistances.length - 1)
    expect(onlySlab(plan).marks).toEqual(before.marks)
  })

  it('PLN-8 drops single broken points of a trace and counts them', () => {
    const json = edited(['slabs', 0, 'capture', 'traces', 0, 'ringPx', 1], ['a', 3])
    const { plan, lost } = parsed(json)
    expect(lost).toEqual([{ code: 'lost-trace-points', values: { count: 1, owner: onlySlab(plan).name } }])
    const ring = tracesOf(onlySlab(fullPlan()))[0]?.ringPx
    expect(tracesOf(onlySlab(plan))[0]?.ringPx).toEqual(ring?.filter((_, index) => index !== 1))
  })

  it('PLN-8 drops a trace of unknown meaning and keeps the others', () => {
    const { plan, lost } = parsed(
      edited(['slabs', 0, 'capture', 'traces', 1, 'meaning'], { kind: 'drawing of a cat' }),
    )
    expect(lost.map(({ code }) => code)).toEqual(['lost-trace'])
    expect(tracesOf(onlySlab(plan))).toEqual(tracesOf(onlySlab(fullPlan())).slice(0, 1))
  })

  const RESET: readonly (readonly [path: readonly (string | number)[], value: unknown])[] = [
    [['name'], 12],
    [['note'], Array(5000).fill('x').join('')],
    [['slabs', 0, 'thicknessMm'], 1e9],
    [['slabs', 0, 'thicknessMm'], undefined],
    [['slabs', 0, 'priceCents'], 12.5],
    [['slabs', 0, 'moistureFraction'], 'dry'],
    [['options', 0, 'table', 'thicknessMm'], 0],
    [['options', 0, 'table', 'sides', 'far', 'finish'], 'chewed'],
    [['options', 0, 'table', 'outline', 'kind'], 'star'],
    [['options', 0, 'resin', 'lossFraction'], 3],
    [['options', 0, 'resin'], null],
    [['options', 0, 'leastJointMm'], -1],
  ]
  it.each(RESET)('PLN-8 resets only %j when it makes no sense', (path, value) => {
    const { plan, lost } = parsed(edited(path, value))
    expect(lost.map(({ code }) => code)).toEqual(['reset-value'])
    expect(onlySlab(plan).marks).toEqual(onlySlab(fullPlan()).marks)
    expect(onlyOption(plan).placements).toEqual(onlyOption(fullPlan()).placements)
  })

  it('PLN-8 recognises a photo slab whose kind was spoilt, and keeps its traces', () => {
    const { plan } = parsed(edited(['slabs', 0, 'capture', 'kind'], 'phto'))
    expect(onlySlab(plan).capture).toEqual(onlySlab(fullPlan()).capture)
  })

  const DROPPED: readonly (readonly [string, readonly (string | number)[], unknown])[] = [
    ['lost-slab', ['slabs', 0], 'oak'],
    ['lost-slabs', ['slabs'], { 0: 'oak' }],
    ['lost-option', ['options', 0], 5],
    ['lost-marks', ['slabs', 0, 'marks'], 'A, B'],
    ['lost-datum', ['slabs', 0, 'capture', 'datum'], { photoId: 'photo' }],
    ['lost-datum', ['slabs', 0, 'capture', 'datum', 'photoId'], 'another'],
    ['lost-photo', ['slabs', 0, 'capture', 'photos', 0, 'hash'], 'ABC'],
    ['lost-observation', ['slabs', 0, 'capture', 'photos', 0, 'observations', 0, 'markId'], 'nobody'],
    ['lost-distance', ['slabs', 0, 'tapedDistances', 0, 'markIds', 1], 'nobody'],
    ['lost-footprint', ['options', 0, 'footprint', 'slabId'], 'nobody'],
    ['lost-footprint', ['options', 0, 'footprint', 'pose', 'angleRad'], 'skew'],
    ['lost-cut', ['options', 0, 'cuts', 1, 'side'], 'top'],
    ['lost-cut', ['options', 0, 'cuts', 4, 'pieceId'], 'nobody'],
    ['lost-piece', ['options', 0, 'pieces', 0, 'anchor'], [1]],
    ['lost-placement', ['options', 0, 'placements', 0, 'pieceId'], 'nobody'],
    ['lost-unknown-fields', ['slabs', 0, 'colour'], 'brown'],
    ['reset-void-depth', ['slabs', 0, 'capture', 'traces', 1, 'meaning', 'depth'], { kind: 'deep' }],
  ]
  it.each(DROPPED)('PLN-8 says %s when %j is %j, and keeps the plan', (code, path, value) => {
    const { plan, lost } = parsed(edited(path, value))
    expect(lost.map((part) => part.code)).toContain(code)
    expect(plan.name).toBe(fullPlan().name)
    expect(plan.id).toBe(fullPlan().id)
  })

  it('PLN-8 gives a slab with a doubled id one of its own and keeps both', () => {
    const plan = fullPlan()
    const twice = { ...plan, slabs: [...plan.slabs, { ...onlySlab(plan), name: 'Other' }] }
    const read = parsed(JSON.parse(JSON.stringify(twice)))
    expect(read.plan.slabs.map(({ name }) => name)).toEqual([onlySlab(plan).name, 'Other'])
    expect(new Set(read.plan.slabs.map(({ id }) => id)).size).toBe(2)
    expect(read.lost).toEqual([{ code: 'reset-doubled-id', values: { name: 'Other', owner: 'Other' } }])
  })

  it('PLN-8 keeps the first of two marks with one id', () => {
    const slab = onlySlab(fullPlan())
    const [first] = slab.marks
    const codes = lostCodes(edited(['slabs', 0, 'marks'], [...slab.marks, { ...first, name: 'Again' }]))
    expect(codes).toEqual(['lost-mark'])
  })

  it('PLN-8 keeps as many slabs as a plan may hold and counts the others', () => {
    const plan = fullPlan()
    const many = Array.from({ length: 230 }, (_, n) => ({ ...onlySlab(plan), id: `s${n}` }))
    const read = parsed(JSON.parse(JSON.stringify({ ...plan, slabs: many })))
    expect(read.plan.slabs).toHaveLength(200)
    expect(read.lost[0]).toEqual({ code: 'lost-too-many', values: { list: 'slabs', count: 30 } })
  })

  it('PLN-8 survives thousands of broken points and nesting without end in good time', () => {
    const ring = Array.from({ length: 15_000 }, (_, n) => (n % 2 === 0 ? [n, null] : [n, n]))
    let nested: unknown = 1
    for (let depth = 0; depth < 100_000; depth++) nested = [nested]
    const json = edited(['slabs', 0, 'capture', 'traces', 0, 'ringPx'], ring) as Json
    const { plan, lost } = parsed({ ...json, nested })
    expect(tracesOf(onlySlab(plan))[0]?.ringPx).toHaveLength(7_500)
    expect(lost).toContainEqual({
      code: 'lost-trace-points',
      values: { count: 7_500, owner: onlySlab(plan).name },
    })
  })

  it('PLN-8 never loses the plan, and never gives an invalid one, whatever single place is spoilt', () => {
    const seed = 20_265
    const random = seededRandom(seed)
    process.stdout.write(`seed ${seed}\n`)
    const nonsense = [
      null,
      -1,
      1e308,
      '',
      'x',
      [],
      {},
      true,
      [[1]],
      { kind: 'x' },
      'y'.repeat(300),
      undefined,
    ]
    let spoilt = 0
    for (const plan of [fullPlan(), frozenPlan()]) {
      for (const path of pathsOf(plan)) {
        if (path[0] === 'format' || path[0] === 'version') continue
        const value = nonsense[random.integer(0, nonsense.length - 1)]
        const read = parsed(edited(path, value, plan))
        spoilt++
        const again = parsePlan(JSON.parse(JSON.stringify(read.plan)))
        expect(again, `${path.join('/')} = ${JSON.stringify(value)}`).toEqual({
          ok: true,
          value: { plan: read.plan, lost: [] },
        })
      }
    }
    expect(spoilt).toBeGreaterThan(500)
  })
})

/** Every place of some JSON, inner ones included. */
function pathsOf(json: unknown): readonly (readonly (string | number)[])[] {
  if (typeof json !== 'object' || json === null) return []
  return Object.entries(json).flatMap(([key, value]) => {
    const step = Array.isArray(json) ? Number(key) : key
    return [[step], ...pathsOf(value).map((rest) => [step, ...rest])]
  })
}
