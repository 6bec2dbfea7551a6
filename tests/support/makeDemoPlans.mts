/**
 * Makes demo-data/: the two invented jobs that the program opens with. Run from the project's root:
 *
 *   node -e "import('vite').then((vite) => vite.runnerImport('./tests/support/makeDemoPlans.mts'))"
 *
 * What a careful maker would have clicked and taped is made from the truth files of tests/photos: marks at their
 * centres, distances as a tape reads them (whole mm), outlines followed with a point wherever they bend, each point off
 * by a little. The program itself never sees a truth file.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import {
  applyIsometryToRing,
  intersectRegions,
  type Isometry,
  pxPoint,
  type PxPoint,
  type Region,
  regionsAreaMm2,
  simplifyRing,
  slabPoint,
  type SlabPoint,
  tablePoint,
} from '../../src/core/geometry'
import { inspectImageFile, withoutLocation } from '../../src/core/photo'
import {
  blankOption,
  blankPhotoSlab,
  blankPlan,
  blankStationSlab,
  computePlan,
  parsePlan,
  type Option,
  type Plan,
  type Slab,
  type Trace,
} from '../../src/core/plan'
import { planText } from '../../src/state/planFile'
import { demoCosts, demoHeights, demoShop, demoStanding } from './demoShop'
import { type PhotoName, type PhotoTruth, readPhotoBytes, readTruth, truthPlaneToPhotoPx } from './truth'

interface Job {
  readonly folder: 'library-table' | 'kitchen-table'
  readonly photo: PhotoName
  readonly seed: number
  readonly name: string
  readonly note: string
  readonly slab: Pick<Slab, 'name' | 'tag' | 'species' | 'moistureFraction' | 'priceCents'>
  readonly table: Pick<Option['table'], 'outline' | 'thicknessMm'>
  readonly castThicknessMm: number
  /** The chalked line, in the truth's frame along its x axis. */
  readonly datumXMm: readonly [number, number]
  /** The offcut of the first crosscut, laid into the largest gap as a maker would slide it about. */
  readonly offcut: { readonly anchor: SlabPoint; readonly pose: Isometry }
}

const JOBS: readonly Job[] = [
  {
    folder: 'library-table',
    photo: 'd2',
    seed: 20_260,
    name: 'Reading-room table',
    note: 'An invented job: no such library, slab, product or price exists. The photo is a rendered picture.',
    slab: { name: 'Ash slab', tag: 'W-14', species: 'ash', moistureFraction: 0.09, priceCents: 64_000 },
    table: { outline: { kind: 'rectangle', lengthMm: 2000, widthMm: 900 }, thicknessMm: 45 },
    castThicknessMm: 55,
    datumXMm: [-1_000, 980],
    offcut: {
      anchor: slabPoint(-13, 50),
      pose: { xMm: 169.3, yMm: -18.5, angleRad: -1.7541, turnedOver: false },
    },
  },
  {
    folder: 'kitchen-table',
    photo: 'd4',
    seed: 20_261,
    name: 'Kitchen table',
    note: 'An invented job: no such family, slab, product or price exists. The photo is a rendered picture.',
    slab: { name: 'Cherry slab', tag: 'W-9', species: 'cherry', moistureFraction: 0.1, priceCents: 52_000 },
    table: { outline: { kind: 'rectangle', lengthMm: 1800, widthMm: 800 }, thicknessMm: 36 },
    castThicknessMm: 42,
    datumXMm: [-950, 940],
    offcut: {
      anchor: slabPoint(46, 24),
      pose: { xMm: 338.9, yMm: 780.2, angleRad: 1.6741, turnedOver: false },
    },
  },
]

/** How far a maker's straight line may leave the edge, and how far a point of it may miss, in photo pixels. */
const FOLLOWED_WITHIN_PX = 1
const MISSES_BY_PX = 0.7

/** A small generator of its own, so that the files can be made again to the byte (mulberry32, public domain). */
function dice(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** Slabs that the invented workshop also looked at: by stations along a chalked line, or by three lengths of tape. */
interface OtherSlab {
  readonly id: string
  readonly name: string
  readonly tag: string
  readonly species: string
  readonly thicknessMm: number | null
  readonly moistureFraction: number | null
  readonly priceCents: number
  /** Left and right of the line, mm, every 300 mm. */
  readonly edges?: readonly (readonly [number, number])[]
  readonly tape?: Slab['stock']['tape']
}

const STATION_STEP_MM = 300

const OTHER_SLABS: readonly OtherSlab[] = [
  {
    id: 'oak',
    name: 'Oak slab',
    tag: 'W-21',
    species: 'white oak',
    thicknessMm: 65,
    moistureFraction: 0.1,
    priceCents: 118_000,
    edges: [
      [495, 520],
      [505, 510],
      [515, 505],
      [500, 512],
      [492, 525],
      [498, 530],
      [510, 515],
      [520, 500],
      [512, 508],
    ],
  },
  {
    id: 'walnut',
    name: 'Walnut slab',
    tag: 'W-5',
    species: 'black walnut',
    thicknessMm: 60,
    moistureFraction: 0.18,
    priceCents: 96_000,
    edges: [
      [470, 480],
      [480, 470],
      [475, 486],
      [482, 490],
      [490, 478],
      [486, 470],
      [478, 474],
      [470, 482],
      [476, 478],
    ],
  },
  {
    id: 'elm',
    name: 'Elm slab',
    tag: 'W-17',
    species: 'american elm',
    thicknessMm: 58,
    moistureFraction: null,
    priceCents: 41_000,
    edges: [
      [300, 330],
      [320, 310],
      [340, 330],
      [330, 350],
      [310, 340],
      [300, 320],
      [290, 310],
      [310, 300],
    ],
  },
  {
    id: 'beech',
    name: 'Beech slab',
    tag: 'W-30',
    species: 'american beech',
    thicknessMm: 50,
    moistureFraction: 0.09,
    priceCents: 38_000,
    tape: { lengthMm: 2300, narrowestMm: 930, widestMm: 1010 },
  },
  {
    id: 'maple',
    name: 'Maple slab',
    tag: 'W-8',
    species: 'sugar maple',
    thicknessMm: 64,
    moistureFraction: 0.1,
    priceCents: 57_000,
    tape: { lengthMm: 2450, narrowestMm: 840, widestMm: 960 },
  },
]

function otherSlab({ edges, tape, ...facts }: OtherSlab): Slab {
  const blank = blankStationSlab(facts.id, facts.name, facts.thicknessMm)
  const stations = (edges ?? []).map(([leftMm, rightMm], n) => ({
    alongMm: n * STATION_STEP_MM,
    leftMm,
    rightMm,
  }))
  return {
    ...blank,
    ...facts,
    stock: { ...blank.stock, ...(tape === undefined ? {} : { tape }) },
    capture: { kind: 'stations', stations },
  }
}

const tenth = (value: number): number => Math.round(value * 10) / 10

const clicked = ([x, y]: readonly [number, number]): PxPoint => pxPoint(tenth(x), tenth(y))

function followed(ring: readonly (readonly [number, number])[], roll: () => number): readonly PxPoint[] {
  const corners = simplifyRing(
    ring.map(([x, y]) => pxPoint(x, y)),
    FOLLOWED_WITHIN_PX,
  )
  return corners.map(([x, y]) => {
    const angle = roll() * 2 * Math.PI
    const miss = Math.sqrt(roll()) * MISSES_BY_PX
    return clicked([x + miss * Math.cos(angle), y + miss * Math.sin(angle)])
  })
}

function tracesOf(truth: PhotoTruth, photoId: string, roll: () => number): readonly Trace[] {
  const origin = { kind: 'hand' } as const
  const ringPx = followed(truth.slab.top_outline_px, roll)
  const outline: Trace = { id: 'outline', photoId, meaning: { kind: 'outline' }, ringPx, origin }
  const voids = truth.slab.voids.map((hole): Trace => {
    const depth = hole.through
      ? ({ kind: 'through' } as const)
      : ({ kind: 'partial', depthMm: Math.round(hole.depth_mm) } as const)
    return {
      id: `void-${hole.id}`,
      photoId,
      meaning: { kind: 'void', depth },
      ringPx: followed(hole.top_polygon_px, roll),
      origin,
    }
  })
  return [outline, ...voids]
}

/** As careful as the program's own look at the pixels round a click. */
const CAREFUL_CLICK_SD_PX = 0.3

const MARK_NAMES = ['A', 'B', 'C', 'D'] as const

function slabOf(job: Job): Slab {
  const truth = readTruth(job.photo)
  const marks = truth.references.find((reference) => 'centers_px' in reference)
  if (marks === undefined) throw new Error(`${job.photo} has no marks`)
  const idOf = (number: string): string => `mark-${MARK_NAMES[Number(number) - 1]?.toLowerCase() ?? number}`
  const photoId = 'photo'
  const bytes = withoutLocation(readPhotoBytes(job.photo))
  const facts = inspectImageFile(bytes)
  const photo = {
    id: photoId,
    hash: bytesToHex(sha256(bytes)),
    fileName: 'slab.jpg',
    mediaType: 'image/jpeg',
    widthPx: truth.photo.width_px,
    heightPx: truth.photo.height_px,
    focalLength35mm: facts.ok ? facts.value.focalLength35mm : null,
    face: 'top',
    observations: marks.centers_px.map((at, n) => ({
      markId: idOf(String(n + 1)),
      atPx: clicked(at),
      sdPx: CAREFUL_CLICK_SD_PX,
      refinement: { kind: 'none' as const },
    })),
    straightLines: [],
  } as const
  const [fromX, toX] = job.datumXMm
  const blank = blankPhotoSlab('slab', job.slab.name, photo, truth.slab.thickness_mm)
  return {
    ...blank,
    ...job.slab,
    wood: { ...blank.wood, heights: demoHeights(toX - fromX, 600, truth.slab.thickness_mm) },
    marks: MARK_NAMES.map((name, n) => ({ id: idOf(String(n + 1)), name, heightMm: 0 })),
    tapedDistances: Object.entries(marks.pair_distances_mm).map(([pair, lengthMm]) => {
      const [from = '', to = ''] = pair.split('-')
      return { id: `tape-${pair}`, markIds: [idOf(from), idOf(to)], lengthMm: Math.round(lengthMm) }
    }),
    capture: {
      kind: 'photo',
      photos: [photo],
      datum: {
        photoId,
        fromPx: clicked(truthPlaneToPhotoPx(truth, fromX, 0)),
        toPx: clicked(truthPlaneToPhotoPx(truth, toX, 0)),
      },
      traces: tracesOf(truth, photoId, dice(job.seed)),
    },
  }
}

function woodOf(plan: Plan): readonly Region<SlabPoint>[] {
  const result = computePlan(plan).slabs.get('slab')
  if (result?.shape.state !== 'ready') throw new Error(`${plan.name}: the slab has no shape`)
  return result.shape.value.wood
}

/** Where a maker would push the template board until most of it lies on wood: whole mm and tenths of a degree. */
function templatePose(wood: readonly Region<SlabPoint>[], lengthMm: number, widthMm: number): Isometry {
  const board = [
    tablePoint(0, 0),
    tablePoint(lengthMm, 0),
    tablePoint(lengthMm, widthMm),
    tablePoint(0, widthMm),
  ]
  const coveredMm2 = (pose: Isometry): number =>
    regionsAreaMm2(
      intersectRegions(wood, [{ outer: applyIsometryToRing(pose, board, slabPoint), holes: [] }]),
    )
  const tenthOfDegree = Math.PI / 1800
  const outer = wood[0]?.outer ?? []
  const middle = (axis: 0 | 1): number => {
    const values = outer.map((point) => point[axis])
    return (Math.min(...values) + Math.max(...values)) / 2
  }
  let best = {
    xMm: Math.round(middle(0) - lengthMm / 2),
    yMm: Math.round(middle(1) - widthMm / 2),
    tenths: 0,
  }
  const poseOf = ({ xMm, yMm, tenths }: typeof best): Isometry => ({
    xMm,
    yMm,
    angleRad: tenths * tenthOfDegree,
    turnedOver: false,
  })
  let bestMm2 = coveredMm2(poseOf(best))
  for (const step of [32, 16, 8, 4, 2, 1]) {
    for (let improved = true; improved;) {
      improved = false
      for (const [x, y, turn] of [
        [step, 0, 0],
        [-step, 0, 0],
        [0, step, 0],
        [0, -step, 0],
        // Turned about its middle, so that the far end does not swing off the slab.
        [0, -Math.round((step * tenthOfDegree * lengthMm) / 2), step],
        [0, Math.round((step * tenthOfDegree * lengthMm) / 2), -step],
      ] as const) {
        const tried = { xMm: best.xMm + x, yMm: best.yMm + y, tenths: best.tenths + turn }
        const triedMm2 = coveredMm2(poseOf(tried))
        if (triedMm2 <= bestMm2) continue
        best = tried
        bestMm2 = triedMm2
        improved = true
      }
    }
  }
  return poseOf(best)
}

function planOf(job: Job): Plan {
  const slab = slabOf(job)
  const option = blankOption('option', 'Plain top')
  const resin = { ...option.resin, castThicknessMm: job.castThicknessMm }
  const bare: Plan = {
    ...blankPlan(`demo-${job.folder}`, option.id),
    name: job.name,
    note: job.note,
    invented: true,
    shop: demoShop(),
    slabs: [slab, ...(job.folder === 'library-table' ? OTHER_SLABS.map(otherSlab) : [])],
    options: [
      {
        ...option,
        table: { ...option.table, ...job.table },
        resin,
        standing: demoStanding(option.standing),
        quote: demoCosts(),
      },
    ],
  }
  const { outline } = job.table
  if (outline.kind !== 'rectangle') throw new Error('the demo tables are rectangles')
  const pose = templatePose(woodOf(bare), outline.lengthMm, outline.widthMm)
  return {
    ...bare,
    options: bare.options.map((each) => ({
      ...each,
      footprint: { slabId: slab.id, pose },
      pieces: [{ id: 'offcut-a', name: 'A', slabId: slab.id, anchor: job.offcut.anchor }],
      placements: [{ id: 'laid-a', pieceId: 'offcut-a', pose: job.offcut.pose }],
    })),
  }
}

for (const job of JOBS) {
  const plan = planOf(job)
  const read = parsePlan(JSON.parse(planText(plan)))
  if (!read.ok || read.value.lost.length > 0) throw new Error(`${job.folder}: the plan does not parse`)
  const folder = new URL(`../../demo-data/${job.folder}/`, import.meta.url)
  mkdirSync(folder, { recursive: true })
  writeFileSync(new URL('plan.json', folder), planText(plan))
  writeFileSync(new URL('slab.jpg', folder), withoutLocation(readPhotoBytes(job.photo)))
  const points = plan.slabs.flatMap(({ capture }) =>
    capture.kind === 'photo' ? capture.traces.map(({ ringPx }) => ringPx.length) : [],
  )
  process.stdout.write(`${job.folder}: traces of ${points.join(', ')} points\n`)
}
