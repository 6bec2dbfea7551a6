import { pieceTree, type NamedCut } from '../../src/core/cuts'
import {
  applyIsometry,
  applyIsometryToRegion,
  applyIsometryToRing,
  invertIsometry,
  type Isometry,
  offsetRegions,
  type Region,
  regionAreaMm2,
  regionsAreaMm2,
  regionsBounds,
  type Ring,
  type SlabPoint,
  slabPoint,
  smallestRectangle,
  subtractRegions,
  type TablePoint,
  tablePoint,
} from '../../src/core/geometry'
import { FILL_LIMITS, type FillTask } from '../../src/core/layout'
import { randomSlab } from './randomSlab'
import { type SeededRandom, seededRandom } from './seededRandom'

const KERF_MM = 3

const rectangle = (minX: number, minY: number, maxX: number, maxY: number): Ring<TablePoint> => [
  tablePoint(minX, minY),
  tablePoint(maxX, minY),
  tablePoint(maxX, maxY),
  tablePoint(minX, maxY),
]

/** The four sides of a blank as cuts on the slab, each walked with the table on the right. */
function sideCuts(blank: Ring<TablePoint>, pose: Isometry): readonly NamedCut[] {
  return blank.map((from, i) => ({
    id: `side${i}`,
    line: {
      from: applyIsometry(pose, from, slabPoint),
      to: applyIsometry(pose, blank[(i + 1) % 4] ?? from, slabPoint),
    },
    kerfMm: KERF_MM,
    wasteSide: pose.turnedOver ? 'right' : 'left',
    divides: { kind: 'in-hand' },
  }))
}

/** A slab under a table that is too wide for it, moved to one side, so that wood falls off there and lacks here. */
export function slabFillTask(seed: number): FillTask {
  const random = seededRandom(seed * 31 + 5)
  const { outer, holes } = randomSlab(seed)
  const slab: Region<SlabPoint> = { outer, holes }
  const { centre, lengthMm, widthMm, angleRad } = smallestRectangle(outer)
  const [length, width] = [lengthMm * random.between(0.75, 0.92), widthMm * random.between(0.85, 1)]
  const aside = widthMm * random.between(0.06, 0.16)
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  const pose: Isometry = {
    xMm: centre[0] - (cos * length) / 2 + (sin * width) / 2 - sin * aside,
    yMm: centre[1] - (sin * length) / 2 - (cos * width) / 2 + cos * aside,
    angleRad,
    turnedOver: false,
  }
  const blank = rectangle(0, 0, length, width)
  const tree = pieceTree([slab], sideCuts(blank, pose))
  const toTable = invertIsometry(pose)
  const offcuts = tree.leaves.filter(({ inHand, region }) => !inHand && regionAreaMm2(region) > 1600)
  return {
    blank,
    wood: tree.leaves
      .filter(({ inHand }) => inHand)
      .map(({ region }) => applyIsometryToRegion(toTable, region, tablePoint)),
    closed: [],
    offcuts: offcuts.map(({ region }, i) => ({ key: `offcut${i}`, region, grainRad: angleRad })),
    tableGrainRad: 0,
    limits: { ...FILL_LIMITS, kerfMm: KERF_MM },
    seed,
  }
}

/** Play of a planted shape in its place, all round: no more than a saw's kerf leaves. */
const PLAY_MM = 1.5

export interface PlantedPuzzle {
  readonly task: FillTask
  /** Area of the shapes that are known to go back. */
  readonly plantedMm2: number
}

/**
 * Shapes cut out of a rectangle of wood along its near edge; turned any way and shuffled, they are the offcuts.
 * The wood around each is sawn off by the least joint and the play.
 */
export function plantedPuzzle(seed: number, pieces: 1 | 2): PlantedPuzzle {
  const random = seededRandom(seed * 97 + pieces)
  const [length, width] = [random.between(1200, 2200), random.between(600, 900)]
  const joint = FILL_LIMITS.leastJointMm
  const shapes = plantedShapes(random, length, width, pieces)
  const wood = subtractRegions(
    [{ outer: rectangle(0, 0, length, width), holes: [] }],
    offsetRegions(shapes, joint + PLAY_MM, 'round'),
  )
  return {
    plantedMm2: regionsAreaMm2(shapes),
    task: {
      blank: rectangle(0, 0, length, width),
      wood,
      closed: [],
      offcuts: shapes.map((shape, i) => ({
        key: `shape${i}`,
        region: scattered(shape, random),
        grainRad: 0,
      })),
      tableGrainRad: 0,
      limits: { ...FILL_LIMITS, grainWithinRad: null, kerfMm: KERF_MM },
      seed,
    },
  }
}

/** One or two strips on the near edge, straight there and wavy above, far enough apart for the joint. */
function plantedShapes(
  random: SeededRandom,
  length: number,
  width: number,
  pieces: number,
): readonly Region<TablePoint>[] {
  const shareMm = length / pieces
  return Array.from({ length: pieces }, (_, i) => {
    const from = shareMm * i + random.between(60, 150)
    const to = shareMm * (i + 1) - random.between(60, 150)
    const high = random.between(70, 160)
    const waves = [1, 2, 3].map((k) => ({
      mm: (high * random.between(0.05, 0.25)) / k,
      per: k * random.between(0.6, 1.4),
      start: random.between(0, 6.28),
    }))
    const count = Math.round((to - from) / 12)
    const upper = Array.from({ length: count + 1 }, (_unused, j) => {
      const share = j / count
      const wave = waves.reduce((sum, w) => sum + w.mm * Math.sin(w.start + 6.28 * w.per * share), 0)
      return tablePoint(from + share * (to - from), width - high - wave)
    })
    return { outer: [...upper, tablePoint(to, width), tablePoint(from, width)], holes: [] }
  })
}

function scattered(shape: Region<TablePoint>, random: SeededRandom): Region<SlabPoint> {
  const { minX, minY } = regionsBounds([shape])
  return applyIsometryToRegion(
    {
      xMm: random.between(-3000, 3000) - minX,
      yMm: random.between(-3000, 3000) - minY,
      angleRad: random.between(-3, 3),
      turnedOver: random.next() < 0.5,
    },
    {
      outer: applyIsometryToRing({ xMm: 0, yMm: 0, angleRad: 0, turnedOver: false }, shape.outer, tablePoint),
      holes: [],
    },
    slabPoint,
  )
}
