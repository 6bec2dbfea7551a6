import { regionAreaMm2, regionBounds, ringBounds, type Region, type TablePoint } from '../../geometry'
import { type FormPiece, type PourPlanInput, woodConductivityWPerMK } from '../../resin'
import type { FootprintResult } from '../tableResult'
import type { Option, Slab } from '../schema'
import { pourWords } from '../text/en/pourWords'
import { castLevels } from './castLevels'
import { type GapsInput, type GapToFill, gapsToFill } from './gapsToFill'

/** All that the pour of an option follows from: plain data that a worker can be sent. */
export interface PourTask {
  readonly gaps: readonly GapToFill[]
  readonly input: Omit<PourPlanInput, 'gaps'>
  readonly log: Option['resin']['log']
}

export interface PourTaskInput extends Omit<GapsInput, 'blank'> {
  readonly footprint: FootprintResult
  readonly tableThicknessMm: number
  readonly moistureFraction: Slab['moistureFraction']
}

/** Air-dry hardwood as slabs are sold; a tenth of water. Common practice, no source: the maker weighs and measures. */
export const USUAL_WOOD_KG_PER_M3 = 640
const USUAL_MOISTURE_FRACTION = 0.1
/** Board of the form's base: particle board, from memory (core/resin woodUplift). */
const BASE_ELASTICITY_N_PER_MM2 = 3000
/** What flattening takes off both faces together. Common practice, no source. */
const FLATTENING_MM = 6

/** The task of an option whose gaps are known. Rules: POUR-1 to POUR-5. */
export function pourTask(input: PourTaskInput): PourTask {
  const { resin, slabThicknessMm, footprint } = input
  const { levelMm } = castLevels(resin, slabThicknessMm)
  const wood = woodOf(input)
  const leastCastMm = input.tableThicknessMm + FLATTENING_MM
  return {
    gaps: gapsToFill({ ...input, blank: footprint.blank }),
    log: resin.log,
    input: {
      sheet: resin.sheet,
      castDepthMm: levelMm,
      leastCastDepthMm: leastCastMm < levelMm ? leastCastMm : null,
      formHeightMm: resin.form.heightMm,
      measuredLitres: resin.measuredLitres,
      lossFraction: resin.lossFraction,
      setting: { room: resin.room, air: resin.air, beneath: resin.beneath, woodWPerMK: wood.woodWPerMK },
      resinC: resin.resinC,
      firstStartHour: resin.start.hour,
      day: resin.waking,
      handlingMinutes: resin.handlingMinutes,
      bucketKg: resin.bucketKg,
      dye: resin.dye,
      pieces: wood.pieces,
      base: {
        spanMm: spanMm(footprint),
        thicknessMm: resin.form.baseThicknessMm,
        elasticityNPerMm2: BASE_ELASTICITY_N_PER_MM2,
        barEveryMm: resin.form.barEveryMm,
      },
      packMarginFraction: resin.packMarginFraction,
      haveLitres: resin.haveLitres,
      layers: resin.layers,
      beyondSheet: resin.beyondSheet,
    },
  }
}

function spanMm({ blank }: FootprintResult): number {
  const { minX, minY, maxX, maxY } = ringBounds(blank)
  return Math.min(maxX - minX, maxY - minY)
}

interface Wood {
  readonly pieces: readonly FormPiece[]
  readonly woodWPerMK: number
}

function woodOf({ coverage, resin, slabThicknessMm, moistureFraction }: PourTaskInput): Wood {
  const densityKgPerM3 = resin.woodDensityKgPerM3 ?? USUAL_WOOD_KG_PER_M3
  const piece = (name: string, region: Region<TablePoint>): FormPiece => {
    const { minX, minY, maxX, maxY } = regionBounds(region)
    const lengthMm = Math.max(maxX - minX, maxY - minY)
    return { name, areaMm2: regionAreaMm2(region), thicknessMm: slabThicknessMm, densityKgPerM3, lengthMm }
  }
  const moisture = Math.min(0.25, moistureFraction ?? USUAL_MOISTURE_FRACTION)
  const basicGravity = densityKgPerM3 / 1000 / (1 + moisture)
  const main = coverage.mainWood.map((region, index) =>
    piece(coverage.mainWood.length === 1 ? pourWords.slab : pourWords.slabPart(index + 1), region),
  )
  const laid = coverage.laid.flatMap(({ name, inBlank }) => inBlank.map((region) => piece(name, region)))
  return { pieces: [...main, ...laid], woodWPerMK: woodConductivityWPerMK(basicGravity, moisture * 100) }
}
