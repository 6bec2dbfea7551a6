import type { Point } from '../geometry'
import type { DrawingLayer, LayeredDrawing, LayerShape } from './layeredDrawing'
import { layersBounds } from './layeredDrawing'

type Pair = readonly [code: number, value: string | number]

/** Colours of the AutoCAD colour index, in turn for the layers: 7 is black on white and white on black. */
const COLOURS = [7, 1, 5, 3, 6]

/** Four decimals: a hundredth of what is promised, and no exponent, which R12 does not read. */
const figure = (value: number): string => (Math.round(value * 10_000) / 10_000 || 0).toFixed(4)

/**
 * A name as one line of ASCII: signs beyond it are written \U+XXXX, as DXF does; a line break would begin a new pair.
 */
const asciiText = (text: string): string =>
  [...text.replaceAll('\\', '/').replace(/[\p{C}\s]+/gu, ' ')]
    .flatMap((sign) => (sign >= ' ' && sign <= '~' ? [sign] : sign.split('').map(escapedUnit)))
    .join('')
    .replaceAll('%%', '% %')
    .slice(0, 250)

const escapedUnit = (unit: string): string =>
  `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`

/** DXF counts y upwards, the core downwards: turned over here, or every part would come out mirrored. */
const at = ([x, y]: Point, plus = 0): readonly Pair[] => [
  [10 + plus, figure(x)],
  [20 + plus, figure(-y)],
  [30 + plus, '0.0'],
]

function shapePairs(shape: LayerShape, layer: string): readonly Pair[] {
  switch (shape.kind) {
    case 'line':
      return [[0, 'LINE'], [8, layer], ...at(shape.from), ...at(shape.to, 1)]
    case 'label':
      return [
        [0, 'TEXT'],
        [8, layer],
        ...at(shape.at),
        [40, figure(shape.heightMm)],
        [1, asciiText(shape.text)],
      ]
    case 'ring':
      return [
        [0, 'POLYLINE'],
        [8, layer],
        [66, 1],
        ...at([0, 0]),
        [70, 1],
        ...shape.points.flatMap((point): readonly Pair[] => [[0, 'VERTEX'], [8, layer], ...at(point)]),
        [0, 'SEQEND'],
        [8, layer],
      ]
  }
}

function layerTable(layers: readonly DrawingLayer[]): readonly Pair[] {
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [70, 1],
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, 0],
    [3, 'Solid line'],
    [72, 65],
    [73, 0],
    [40, '0.0'],
    [0, 'ENDTAB'],
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, layers.length],
    ...layers.flatMap(({ name }, k): readonly Pair[] => [
      [0, 'LAYER'],
      [2, name],
      [70, 0],
      [62, COLOURS[k % COLOURS.length] ?? 7],
      [6, 'CONTINUOUS'],
    ]),
    [0, 'ENDTAB'],
    [0, 'ENDSEC'],
  ]
}

function header(drawing: LayeredDrawing): readonly Pair[] {
  const bounds = layersBounds(drawing) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 }
  return [
    [999, asciiText(`${drawing.title}, lengths in millimetres`)],
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$EXTMIN'],
    ...at([bounds.minX, bounds.maxY]),
    [9, '$EXTMAX'],
    ...at([bounds.maxX, bounds.minY]),
    [0, 'ENDSEC'],
  ]
}

/**
 * A drawing as DXF of release 12, in plain ASCII: lines, closed polylines and texts on named layers, 1 unit to the mm.
 * @returns the file's text; places to 0.0001 mm; y upwards
 * Source: DXF group codes of release 12 (AC1009), from memory; read back by an independent reader in the test.
 * Rules: DRW-13.
 */
export function layersToDxf(drawing: LayeredDrawing): string {
  const entities = drawing.layers.flatMap(({ name, shapes }) =>
    shapes.flatMap((shape) => shapePairs(shape, name)),
  )
  const pairs: readonly Pair[] = [
    ...header(drawing),
    ...layerTable(drawing.layers),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...entities,
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ]
  return pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('')
}
