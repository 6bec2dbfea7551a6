import { strToU8, unzipSync, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { frozenPlan } from '../../tests/support/frozenPlan'
import { randomPlan } from '../../tests/support/randomPlan'
import type { Plan } from '../core/plan'
import { renamePlan, setTableThickness } from './commands'
import { decodePlanFile, encodePlanFile, PLAN_FILE_LIMITS, type PlanFile } from './planFile'

const PLAN = frozenPlan()
const HASH = '3f'.repeat(32)
const PHOTO = Uint8Array.from({ length: 5000 }, (_, n) => (n * 7919) % 256)
const FILE = encodePlanFile(PLAN, new Map([[HASH, PHOTO]]))

function opened(bytes: Uint8Array<ArrayBuffer>): PlanFile {
  const file = decodePlanFile(bytes)
  if (!file.ok) throw new Error(file.problem.code)
  return file.value
}

const codeOf = (bytes: Uint8Array): string => {
  const file = decodePlanFile(new Uint8Array(bytes))
  return file.ok ? 'opened' : file.problem.code
}

/** Sets a 32-bit field of every local (or central) header of a zip: offsets are those of the zip specification. */
function withStatedSize(zip: Uint8Array, size: number): Uint8Array {
  const view = new DataView(zip.slice().buffer)
  for (let at = 0; at + 4 <= view.byteLength; at++) {
    const signature = view.getUint32(at, true)
    if (signature === 0x04034b50) view.setUint32(at + 22, size, true)
    if (signature === 0x02014b50) view.setUint32(at + 24, size, true)
  }
  return new Uint8Array(view.buffer)
}

describe('plan file', () => {
  it('gives back the plan and the photo that were put in', () => {
    const { plan, lost, photos } = opened(FILE)
    expect(plan).toEqual(PLAN)
    expect(lost).toEqual([])
    expect(photos).toEqual(new Map([[HASH, PHOTO]]))
  })

  it('is a plain zip of plan.json and photos/<hash>', () => {
    expect(Object.keys(unzipSync(FILE))).toEqual(['plan.json', `photos/${HASH}`])
  })

  it('save, open, save gives the same bytes', () => {
    for (const plan of [PLAN, randomPlan(3), randomPlan(4)]) {
      const first = encodePlanFile(plan, new Map([[HASH, PHOTO]]))
      const { plan: again, photos } = opened(first)
      expect(encodePlanFile(again, photos)).toEqual(first)
    }
  })

  it('is the same whatever way the plan came about', () => {
    const [option] = PLAN.options
    if (option === undefined) throw new Error('no option')
    const back = { optionId: option.id, thicknessMm: option.table.thicknessMm }
    const away = setTableThickness.apply(PLAN, { ...back, thicknessMm: 77 })
    const returned = setTableThickness.apply(renamePlan.apply(away, { name: PLAN.name }), back)
    const shuffled: Plan = Object.fromEntries(Object.entries(returned).toReversed()) as unknown as Plan
    expect(Object.keys(shuffled)[0]).toBe('options')
    expect(encodePlanFile(shuffled, new Map([[HASH, PHOTO]]))).toEqual(FILE)
  })

  it('opens a plan.json by itself, even with a byte order mark', () => {
    const text = JSON.stringify(PLAN)
    expect(opened(new Uint8Array(strToU8(text))).plan).toEqual(PLAN)
    expect(opened(new Uint8Array(strToU8(`\uFEFF ${text}`))).plan).toEqual(PLAN)
  })

  it('opens a file packed by another program: deflated photos, more entries, another order', () => {
    const other = zipSync({
      'readme.txt': strToU8('hello'),
      [`photos/${HASH}`]: [PHOTO, { level: 9 }],
      'photos/not-a-hash': PHOTO,
      'plan.json': strToU8(JSON.stringify(PLAN)),
    })
    const { plan, photos } = opened(new Uint8Array(other))
    expect(plan).toEqual(PLAN)
    expect([...photos.keys()]).toEqual([HASH])
  })

  it('says what is wrong with files that cannot be opened', () => {
    expect(codeOf(zipSync({ 'other.txt': strToU8('x') }))).toBe('plan-file-no-plan')
    expect(codeOf(zipSync({ 'plan.json': strToU8('{"format":') }))).toBe('plan-broken-json')
    expect(codeOf(zipSync({ 'plan.json': strToU8('[]') }))).toBe('plan-not-a-plan')
    expect(codeOf(zipSync({ 'plan.json': strToU8('{"format":"waneline-plan","version":9}') }))).toBe(
      'plan-newer-version',
    )
    expect(codeOf(strToU8('{"format": nonsense'))).toBe('plan-broken-json')
    for (const length of [4, 30, 200, FILE.length - 40]) {
      expect(codeOf(FILE.subarray(0, length))).toBe('plan-file-damaged')
    }
  })

  it('survives any byte being wrong: it opens the same plan or says that the file is damaged', () => {
    const small = encodePlanFile(PLAN, new Map())
    const seen = new Set<string>()
    for (let at = 0; at < small.length; at++) {
      const broken = small.slice()
      broken[at] = (broken[at] ?? 0) ^ 0x55
      const file = decodePlanFile(broken)
      seen.add(file.ok ? 'opened' : file.problem.code)
      // A wrong date in the directory does no harm; a wrong digit in the plan would.
      if (file.ok) expect(file.value).toEqual({ plan: PLAN, lost: [], photos: new Map() })
    }
    expect([...seen]).toEqual(expect.arrayContaining(['opened', 'plan-file-damaged']))
  })

  it('refuses a plan that states more than a plan ever has, before unpacking it', () => {
    expect(codeOf(withStatedSize(encodePlanFile(PLAN, new Map()), PLAN_FILE_LIMITS.planBytes + 1))).toBe(
      'plan-file-too-large',
    )
  })

  it('refuses a real bomb: a photo that swells a thousandfold', () => {
    const bomb = zipSync({
      'plan.json': strToU8(JSON.stringify(PLAN)),
      [`photos/${HASH}`]: [new Uint8Array(30_000_000), { level: 9 }],
    })
    expect(bomb.length).toBeLessThan(60_000)
    expect(codeOf(bomb)).toBe('plan-file-too-large')
  })

  it('cuts off an entry that is longer than it says', () => {
    const lying = withStatedSize(zipSync({ 'plan.json': [new Uint8Array(20_000_000), { level: 9 }] }), 100)
    expect(codeOf(lying)).toBe('plan-file-damaged')
  })

  it('refuses more photos than any plan shows', () => {
    const photos = Array.from({ length: PLAN_FILE_LIMITS.photos + 1 }, (_, n) => [
      `photos/${n.toString(16).padStart(64, '0')}`,
      new Uint8Array(1),
    ])
    const many = zipSync({ 'plan.json': strToU8(JSON.stringify(PLAN)), ...Object.fromEntries(photos) })
    expect(codeOf(many)).toBe('plan-file-too-large')
  })

  it('mends a plan edited by hand and says what was lost', () => {
    const json: unknown = JSON.parse(JSON.stringify({ ...PLAN, slabs: [...PLAN.slabs, 'oak'] }))
    const { plan, lost } = opened(new Uint8Array(zipSync({ 'plan.json': strToU8(JSON.stringify(json)) })))
    expect(plan).toEqual(PLAN)
    expect(lost.map(({ code }) => code)).toEqual(['lost-slab'])
  })
})
