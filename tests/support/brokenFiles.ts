import { strToU8, zipSync } from 'fflate'
import { readFileSync } from 'node:fs'
import { emptyFile, photoJpeg, smallPng, smallWebp, textNamedJpg } from './jpegs'
import { type SeededRandom, seededRandom } from './seededRandom'
import { withExif } from './exif'

export interface BrokenFile {
  readonly kind: BrokenKind
  readonly name: string
  readonly bytes: Uint8Array
}

const demo = (name: string): string =>
  readFileSync(new URL(`../../demo-data/${name}/plan.json`, import.meta.url), 'utf8')

/** Runs where a page lets it run; leaves a mark that tests look for. */
export const SCRIPT_MARK = 'ranFromFile'

const SCRIPTS = [
  `<img src=x onerror="globalThis.${SCRIPT_MARK}=1">`,
  `<script>globalThis.${SCRIPT_MARK}=1</script>`,
  `"><svg onload=globalThis.${SCRIPT_MARK}=1>`,
  `javascript:globalThis.${SCRIPT_MARK}=1`,
  `{{constructor.constructor('globalThis.${SCRIPT_MARK}=1')()}}`,
]

type Json = null | boolean | number | string | Json[] | { [key: string]: Json }

const isBranch = (value: Json | undefined): value is Json[] | { [key: string]: Json } =>
  typeof value === 'object' && value !== null

/** Every place of a document, as the branch that holds it and its key there. */
function placesIn(json: Json): readonly (readonly [branch: Json[] | { [key: string]: Json }, key: string])[] {
  if (!isBranch(json)) return []
  return Object.entries(json).flatMap(([key, value]) => [[json, key] as const, ...placesIn(value)])
}

const pick = <T>(random: SeededRandom, items: readonly T[]): T => {
  const item = items[random.integer(0, items.length - 1)]
  if (item === undefined) throw new Error('nothing to pick from')
  return item
}

const deep = (levels: number): Json => {
  let json: Json = 1
  for (let level = 0; level < levels; level++) json = level % 2 === 0 ? [json] : { id: json }
  return json
}

const ODD_VALUES: readonly ((random: SeededRandom) => Json)[] = [
  () => null,
  () => true,
  () => '',
  () => -1,
  () => 1e308,
  () => -1e308,
  () => 5e-324,
  () => Number.MAX_SAFE_INTEGER * 4,
  () => 'no number',
  () => [],
  () => ({}),
  () => [[[[]]]],
  () => 'x'.repeat(70_000),
  () => deep(40),
  (random) => pick(random, SCRIPTS),
  () => ({ __proto__: null, constructor: 'x' }),
]

/** A plan with some places of it changed. */
function changedPlan(random: SeededRandom, changes: number, change: (random: SeededRandom) => Json): Json {
  const plan = JSON.parse(demo(pick(random, ['library-table', 'kitchen-table']))) as Json
  for (let n = 0; n < changes; n++) {
    const [branch, key] = pick(random, placesIn(plan))
    if (random.next() < 0.15) Reflect.deleteProperty(branch, key)
    else Reflect.set(branch, key, change(random))
  }
  return plan
}

const planZip = (json: Json, more: Record<string, Uint8Array> = {}): Uint8Array =>
  zipSync({ 'plan.json': strToU8(JSON.stringify(json)), ...more })

/** Texts that are shown somewhere, every one a script. */
function scriptedPlan(random: SeededRandom): Json {
  const plan = JSON.parse(demo('library-table')) as Json
  const SHOWN = new Set(['name', 'note', 'fileName', 'species', 'tag'])
  for (const [branch, key] of placesIn(plan)) {
    if (SHOWN.has(key)) Reflect.set(branch, key, pick(random, SCRIPTS))
  }
  return plan
}

const flipped = (random: SeededRandom, bytes: Uint8Array, most: number): Uint8Array => {
  const broken = bytes.slice()
  for (let n = random.integer(1, most); n > 0; n--) {
    const at = random.integer(0, broken.length - 1)
    broken[at] = (broken[at] ?? 0) ^ (1 << random.integer(0, 7))
  }
  return broken
}

const cut = (random: SeededRandom, bytes: Uint8Array): Uint8Array =>
  bytes.slice(0, random.integer(1, bytes.length - 1))

const image = (random: SeededRandom): Uint8Array =>
  pick(random, [() => photoJpeg({ photo: 'd2', size: '0.75 MP' }), () => smallPng(), () => smallWebp()])()

/** Nothing but zeros: packed to a thousandth. */
const bomb = (megabytes: number): Uint8Array => new Uint8Array(megabytes * 1_000_000)

const svg = (script: string): string =>
  `<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" width="900" height="600"><script>globalThis.${SCRIPT_MARK}=1</script><image href="x" onerror="globalThis.${SCRIPT_MARK}=1"/><text>${script}</text></svg>`

/** The size that a PNG's header states, with a right checksum or not. */
function boastfulPng(random: SeededRandom): Uint8Array {
  const png = smallPng().slice()
  const view = new DataView(png.buffer)
  view.setUint32(16, random.integer(20_000, 2_000_000_000))
  view.setUint32(20, random.integer(20_000, 2_000_000_000))
  return png
}

const nested = (open: string, levels: number): Uint8Array => strToU8(`{"format":${open.repeat(levels)}`)

const MAKERS = {
  'wrong types': (random) =>
    planZip(changedPlan(random, random.integer(1, 30), (r) => pick(r, ODD_VALUES)(r))),
  'huge numbers': (random) =>
    planZip(changedPlan(random, 60, (r) => (r.next() - 0.5) * 10 ** r.integer(0, 300))),
  'bits flipped in a saved job': (random) =>
    flipped(random, planZip(JSON.parse(demo('library-table')) as Json), 12),
  'saved job cut off': (random) => cut(random, planZip(JSON.parse(demo('library-table')) as Json)),
  'plain text cut off': (random) => cut(random, strToU8(demo('kitchen-table'))),
  'plain text with bits flipped': (random) => flipped(random, strToU8(demo('kitchen-table')), 40),
  'script in every text': (random) => planZip(scriptedPlan(random)),
  'deep nesting': (random) =>
    pick(random, [
      () => nested('[', random.integer(1_000, 200_000)),
      () => nested('{"a":', random.integer(1_000, 100_000)),
      () => planZip({ ...(changedPlan(random, 0, () => null) as object), slabs: deep(3_000) }),
    ])(),
  'packed far too well': (random) =>
    pick(random, [
      () => zipSync({ 'plan.json': bomb(random.integer(33, 60)) }),
      () => planZip({}, { [`photos/${'ab'.repeat(32)}`]: bomb(random.integer(20, 40)) }),
      () =>
        planZip(
          JSON.parse(demo('library-table')) as Json,
          Object.fromEntries(
            Array.from({ length: 420 }, (_, n) => [
              `photos/${n.toString(16).padStart(64, '0')}`,
              bomb(0.001),
            ]),
          ),
        ),
    ])(),
  'photo under a false hash': (random) => {
    const plan = demo('library-table')
    const hash = /[0-9a-f]{64}/.exec(plan)?.[0] ?? ''
    return planZip(JSON.parse(plan) as Json, { [`photos/${hash}`]: image(random) })
  },
  'names that climb out': (random) =>
    zipSync({
      [pick(random, ['../plan.json', '/plan.json', 'a/plan.json', 'photos/x', 'constructor'])]: strToU8('{}'),
    }),
  'photo with bits flipped': (random) => flipped(random, image(random), 60),
  'photo cut off': (random) => cut(random, image(random)),
  'photo of a false size': (random) =>
    pick(random, [
      () => boastfulPng(random),
      () => withExif(image(random).subarray(0, 400), { orientation: 6 }),
      () =>
        new Uint8Array([
          ...photoJpeg({ photo: 'd2', size: '0.75 MP' }).subarray(0, 2),
          ...cut(random, image(random)),
        ]),
    ])(),
  'drawing with a script': (random) => strToU8(svg(pick(random, SCRIPTS))),
  noise: (random) => Uint8Array.from({ length: random.integer(1, 5_000) }, () => random.integer(0, 255)),
  'nothing to it': (random) =>
    pick(random, [emptyFile, textNamedJpg, () => strToU8('{'), () => strToU8('PK')])(),
} as const satisfies Record<string, (random: SeededRandom) => Uint8Array>

export type BrokenKind = keyof typeof MAKERS

export const BROKEN_KINDS = Object.keys(MAKERS) as readonly BrokenKind[]

const NAMES = [
  'slab.jpg',
  'job.waneline',
  `${SCRIPTS[0] ?? ''}.jpg`,
  'a'.repeat(300),
  '..',
  'ｊｏｂ\u202egpj.waneline',
]

/** A file that is not what it should be. The same seed gives the same file; kinds take turns. */
export function brokenFile(seed: number): BrokenFile {
  const random = seededRandom(seed)
  const kind = BROKEN_KINDS[seed % BROKEN_KINDS.length] ?? 'noise'
  return { kind, name: pick(random, NAMES), bytes: MAKERS[kind](random) }
}
