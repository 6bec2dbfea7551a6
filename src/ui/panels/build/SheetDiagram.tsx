import { useId } from 'react'
import type { BuildResult } from '../../../core/plan'
import type { SheetCut } from '../../../core/form'
import { useFormat } from '../../text/useFormat'
import { bt } from './bt'

type Form = NonNullable<BuildResult['form']>
type Use = NonNullable<Form['cutting']>['sheets'][number]

interface Props {
  readonly form: Form
  readonly use: Use
  readonly number: number
}

interface Rect {
  readonly xMm: number
  readonly yMm: number
  readonly widthMm: number
  readonly heightMm: number
}

/** Letters are as large as the rectangle lets them be, and lie along its longer side. */
function RectText({ rect, lines, sizeMm }: { rect: Rect; lines: readonly string[]; sizeMm: number }) {
  const isUpright = rect.heightMm > rect.widthMm
  const longMm = Math.max(rect.widthMm, rect.heightMm)
  const shortMm = Math.min(rect.widthMm, rect.heightMm)
  const letters = lines.reduce((most, line) => Math.max(most, line.length), 1)
  const fitMm = Math.min(sizeMm, shortMm / (lines.length * 1.3), longMm / (letters * 0.58))
  if (fitMm < sizeMm * 0.4) return null
  const [x, y] = [rect.xMm + rect.widthMm / 2, rect.yMm + rect.heightMm / 2]
  return (
    <text
      x={x}
      y={y}
      fontSize={fitMm}
      textAnchor="middle"
      transform={isUpright ? `rotate(-90 ${x} ${y})` : undefined}
    >
      {lines.map((line, at) => (
        <tspan key={line} x={x} dy={at === 0 ? `${0.35 - (lines.length - 1) * 0.6}em` : '1.2em'}>
          {line}
        </tspan>
      ))}
    </text>
  )
}

const middleOf = (cut: SheetCut): readonly [number, number] => {
  const along = (cut.fromMm + cut.toMm) / 2
  return cut.direction === 'upright' ? [cut.atMm, along] : [along, cut.atMm]
}

/** One sheet with its parts, the cuts in their order, and what is left over. */
export function SheetDiagram({ form, use, number }: Props) {
  const format = useFormat()
  const hatch = useId()
  const sheet = form.stock[use.stock]
  if (sheet === undefined) return null
  const size = (rect: Rect) => `${format.length(rect.widthMm)} × ${format.length(rect.heightMm)}`
  const caption = bt('sheet-of', {
    number,
    name: sheet.name,
    size: `${format.length(sheet.lengthMm)} × ${format.length(sheet.widthMm)}`,
  })
  const unit = sheet.lengthMm / 100
  const nameOf = (part: number) => form.parts[part]?.name ?? ''
  const picture = bt('sheet-picture', {
    parts: use.parts.map((part) => `${nameOf(part.part)} ${size(part)}`).join('; '),
    cuts: use.cuts.length,
    offcuts: use.offcuts.map(size).join('; ') || '0',
  })
  return (
    <figure className="sheet-diagram">
      <figcaption>{caption}</figcaption>
      <svg
        viewBox={`${-unit} ${-unit} ${sheet.lengthMm + 2 * unit} ${sheet.widthMm + 2 * unit}`}
        role="img"
        aria-label={`${caption}. ${picture}`}
        style={{ '--sheet-line': `${unit * 0.25}px` } as React.CSSProperties}
      >
        <defs>
          <pattern
            id={hatch}
            width={unit * 1.6}
            height={unit * 1.6}
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line x1="0" y1="0" x2="0" y2={unit * 1.6} className="sheet-hatch" />
          </pattern>
        </defs>
        <rect x="0" y="0" width={sheet.lengthMm} height={sheet.widthMm} className="sheet-whole" />
        {use.offcuts.map((rect) => (
          <g key={`${rect.xMm}/${rect.yMm}`} className="sheet-left">
            <rect
              x={rect.xMm}
              y={rect.yMm}
              width={rect.widthMm}
              height={rect.heightMm}
              fill={`url(#${hatch})`}
            />
            <RectText
              rect={rect}
              sizeMm={unit * 2.6}
              lines={[
                bt('sheet-offcut', {
                  length: format.length(rect.widthMm),
                  width: format.length(rect.heightMm),
                }),
              ]}
            />
          </g>
        ))}
        {use.parts.map((part) => (
          <g key={part.part} className="sheet-part">
            <rect x={part.xMm} y={part.yMm} width={part.widthMm} height={part.heightMm} />
            <RectText rect={part} sizeMm={unit * 3} lines={[nameOf(part.part), size(part)]} />
          </g>
        ))}
        {use.cuts.map((cut, at) => {
          const [x, y] = middleOf(cut)
          return (
            <g key={`${cut.direction}/${cut.atMm}/${cut.fromMm}`} className="sheet-cut">
              <circle cx={x} cy={y} r={unit * 1.5} />
              <text x={x} y={y} fontSize={unit * 2} textAnchor="middle" dy="0.36em">
                {at + 1}
              </text>
            </g>
          )
        })}
      </svg>
    </figure>
  )
}
