import { carrierShares, massCentre, type WeighedPart } from '../../form'
import { intersectRegions, regionsAreaMm2, type Region, tablePoint, type TablePoint } from '../../geometry'
import { mixShares } from '../../resin'
import { densityKgPerM3, gravityAt } from '../../wood'
import { USUAL_WOOD_KG_PER_M3 } from '../pour/pourTask'
import type { WeightFigures } from './buildResult'
import type { BuildTask } from './buildTask'
import { speciesOf, woodPieces } from './woodFigures'

const MM3_PER_M3 = 1e9
/** Moisture where nobody has read it. Common practice, no source. */
const USUAL_MOISTURE_FRACTION = 0.1
/** Cast resin where the sheet names no density. From memory. */
export const USUAL_RESIN_KG_PER_M3 = 1100

type Density = Pick<WeightFigures, 'woodKgPerM3' | 'densityFrom'>

function woodDensity({ slab, option, shape }: BuildTask): Density {
  const typed = option.resin.woodDensityKgPerM3
  if (typed !== null) return { woodKgPerM3: typed, densityFrom: 'typed' }
  const slabMm3 = shape.woodAreaMm2 * (slab.thicknessMm ?? option.table.thicknessMm)
  if (slab.wood.massKg !== null)
    return { woodKgPerM3: (slab.wood.massKg * MM3_PER_M3) / slabMm3, densityFrom: 'weighed' }
  const species = speciesOf(slab)
  if (species === null) return { woodKgPerM3: USUAL_WOOD_KG_PER_M3, densityFrom: 'usual' }
  const moisture = slab.moistureFraction ?? USUAL_MOISTURE_FRACTION
  return { woodKgPerM3: densityKgPerM3(gravityAt(species, moisture), moisture), densityFrom: 'species' }
}

export const resinKgPerM3 = ({ option }: BuildTask): number =>
  mixShares(option.resin.sheet).mixedDensityKgPerM3 ?? USUAL_RESIN_KG_PER_M3

/** What the slab, its pieces, the cast and the finished top weigh, and who carries them. Rules: BLD-4. */
export function weightFigures(task: BuildTask): WeightFigures {
  const { slab, shape, resin } = task
  const density = woodDensity(task)
  const slabMm = slab.thicknessMm ?? task.option.table.thicknessMm
  const wood = (areaMm2: number): number => (areaMm2 * slabMm * density.woodKgPerM3) / MM3_PER_M3
  const piecesKg = woodPieces(task).map(({ name, regions }) => ({
    name,
    massKg: wood(regionsAreaMm2(regions)),
  }))
  const resinKg = (resin.gapLitres * resinKgPerM3(task)) / 1000
  const castKg = piecesKg.reduce((sum, { massKg }) => sum + massKg, 0) + resinKg
  const top = massCentre(topParts(task, density.woodKgPerM3))
  const slabKg = slab.wood.massKg ?? wood(shape.woodAreaMm2)
  const topKg = top?.massKg ?? 0
  return {
    ...density,
    slabKg,
    isSlabWeighed: slab.wood.massKg !== null,
    piecesKg,
    castKg,
    topKg,
    centre:
      top?.centre ?? tablePoint(task.footprint.finishedLengthMm / 2, task.footprint.finishedWidthMm / 2),
    carriers: { slab: carrierShares(slabKg), cast: carrierShares(castKg), top: carrierShares(topKg) },
  }
}

/** The finished top: wood and resin within its outline, as thick as it is to be. */
function topParts(task: BuildTask, woodKgPerM3: number): readonly WeighedPart[] {
  const { footprint, coverage, option } = task
  const outline = [{ outer: footprint.finished, holes: [] }]
  const within = (regions: readonly Region<TablePoint>[]) => intersectRegions(regions, outline)
  const { thicknessMm } = option.table
  const resin = resinKgPerM3(task)
  const gaps = coverage.gaps.flatMap(({ region, depthMm }): readonly WeighedPart[] => {
    const regions = within([region])
    const filledMm = Math.min(thicknessMm, depthMm ?? thicknessMm)
    return [
      { regions, thicknessMm: filledMm, densityKgPerM3: resin },
      { regions, thicknessMm: thicknessMm - filledMm, densityKgPerM3: woodKgPerM3 },
    ]
  })
  const wood = [...coverage.mainWood, ...coverage.laid.flatMap(({ inBlank }) => inBlank)]
  return [{ regions: within(wood), thicknessMm, densityKgPerM3: woodKgPerM3 }, ...gaps]
}
