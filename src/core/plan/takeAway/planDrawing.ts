import {
  applyIsometry,
  applyIsometryToRegion,
  applyIsometryToRing,
  invertIsometry,
  interiorPoint,
  offsetRegions,
  type Point,
  type Region,
  type Ring,
  type SlabPoint,
  tablePoint,
} from '../../geometry'
import type { LayeredDrawing, LayerShape } from '../../drawing'
import { gatherSheetInput, type CutSheetRequest, type SheetInput } from '../sheets/sheetInput'

export type TakeAwayRequest = Omit<CutSheetRequest, 'paper'>
export type TakeAwayInput = Omit<SheetInput, 'orientation'>

/** As the slab lies, from its datum; or as the top is put together, from its corner. */
export type DrawingFrame = 'slab' | 'table'

const LABEL_MM = 20

/** What files and templates need of a plan; null while its shape, table or cuts are not worked out. */
export const gatherTakeAway = (request: TakeAwayRequest): TakeAwayInput | null =>
  gatherSheetInput({ ...request, paper: 'a4' })

const ringShape = (points: Ring): LayerShape => ({ kind: 'ring', points })

const regionShapes = ({ outer, holes }: Region): readonly LayerShape[] => [outer, ...holes].map(ringShape)

const label = (text: string, at: Point): LayerShape => ({ kind: 'label', text, at, heightMm: LABEL_MM })

interface Placing {
  readonly point: (at: SlabPoint) => Point
  readonly ring: (ring: Ring<SlabPoint>) => Ring
  readonly region: (region: Region<SlabPoint>) => Region
}

const AS_IT_LIES: Placing = { point: (at) => at, ring: (ring) => ring, region: (region) => region }

/** From the slab into the frame that is drawn. */
function placingOf({ option }: TakeAwayInput, frame: DrawingFrame): Placing {
  const pose = option.footprint?.pose
  if (frame === 'slab' || pose === undefined) return AS_IT_LIES
  const toTable = invertIsometry(pose)
  return {
    point: (at) => applyIsometry(toTable, at, tablePoint),
    ring: (ring) => applyIsometryToRing(toTable, ring, tablePoint),
    region: (region) => applyIsometryToRegion(toTable, region, tablePoint),
  }
}

function pieceShapes(input: TakeAwayInput, frame: DrawingFrame): readonly LayerShape[] {
  const { coverage, pieces, text } = input
  if (frame === 'slab') {
    return pieces.pieces.flatMap(({ region, name, anchor }) => [...regionShapes(region), label(name, anchor)])
  }
  return [
    ...coverage.mainWood.flatMap(regionShapes),
    ...coverage.placed.flatMap(({ name, inBlank }) =>
      inBlank.flatMap((region) => [
        ...regionShapes(region),
        label(text.sheetPiece({ name }), interiorPoint(region)),
      ]),
    ),
  ]
}

/** The inside of the form: the blank with the clearance round it; none where nothing is cast. */
function formShapes({ resin, footprint, option }: TakeAwayInput, frame: DrawingFrame): readonly LayerShape[] {
  if (resin === null || resin.gapLitres === 0) return []
  const outer = frame === 'slab' ? footprint.blankOnSlab : footprint.blank
  return offsetRegions<Point>([{ outer, holes: [] }], option.resin.clearanceMm, 'mitre').flatMap(regionShapes)
}

/**
 * The plan as a drawing for other programs, in mm and true size.
 * @param frame which origin and axes it is drawn from
 * Rules: TAK-1, TAK-2.
 */
export function planDrawing(input: TakeAwayInput, frame: DrawingFrame): LayeredDrawing {
  const { shape, pieces, footprint, plan } = input
  const placing = placingOf(input, frame)
  const table = frame === 'slab' ? footprint.finishedOnSlab : footprint.finished
  const blank = frame === 'slab' ? footprint.blankOnSlab : footprint.blank
  const cuts = pieces.cuts.flatMap(({ from, to, number }): readonly LayerShape[] => {
    const [a, b] = [placing.point(from.at), placing.point(to.at)]
    return [{ kind: 'line', from: a, to: b }, label(String(number), a)]
  })
  return {
    title: plan.name,
    layers: [
      {
        name: 'outline',
        shapes: [shape.outline, ...shape.voids.map(({ ring }) => ring)].map((ring) =>
          ringShape(placing.ring(ring)),
        ),
      },
      { name: 'cuts', shapes: cuts },
      { name: 'pieces', shapes: pieceShapes(input, frame) },
      { name: 'table', shapes: [ringShape(table), ringShape(blank)] },
      { name: 'form', shapes: formShapes(input, frame) },
    ],
  }
}
