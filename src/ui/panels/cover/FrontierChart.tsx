import type { FrontierPoint } from '../../../core/layout'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'

const WIDTH = 640
const HEIGHT = 320
const BOX = { left: 96, top: 14, width: 524, height: 250 } as const

interface Props {
  readonly wood: readonly FrontierPoint[]
  readonly resin: readonly FrontierPoint[]
  readonly client: { readonly lengthMm: number; readonly widthMm: number }
  readonly chosen: FrontierPoint | null
  readonly onChoose: (point: FrontierPoint) => void
}

const fits = ({ lengthMm }: FrontierPoint): boolean => lengthMm > 0

function scales({ wood, resin, client }: Props) {
  const points = [...wood, ...resin].filter(fits)
  const widths = [...points.map(({ widthMm }) => widthMm), client.widthMm]
  const lengths = [...points.map(({ lengthMm }) => lengthMm), client.lengthMm]
  const [least, greatest] = [Math.min(...widths), Math.max(...widths)]
  const top = Math.max(...lengths) * 1.08
  return {
    least,
    greatest,
    top,
    x: (mm: number): number => BOX.left + ((mm - least) / Math.max(1, greatest - least)) * BOX.width,
    y: (mm: number): number => BOX.top + BOX.height * (1 - mm / top),
  }
}

type Scales = ReturnType<typeof scales>

const linePath = (points: readonly FrontierPoint[], { x, y }: Scales): string =>
  points
    .filter(fits)
    .map(
      ({ widthMm, lengthMm }, k) =>
        `${k === 0 ? 'M' : 'L'}${x(widthMm).toFixed(1)} ${y(lengthMm).toFixed(1)}`,
    )
    .join('')

function Axes({ scale }: { readonly scale: Scales }) {
  const format = useFormat()
  const lengths = [0.25, 0.5, 0.75, 1].map((share) => (scale.top / 1.08) * share)
  const widths = [0, 0.5, 1].map((share) => scale.least + share * (scale.greatest - scale.least))
  return (
    <g className="chart-axes">
      {lengths.map((mm) => (
        <g key={mm}>
          <line x1={BOX.left} x2={BOX.left + BOX.width} y1={scale.y(mm)} y2={scale.y(mm)} />
          <text x={BOX.left - 6} y={scale.y(mm) + 5} textAnchor="end">
            {format.length(mm)}
          </text>
        </g>
      ))}
      {widths.map((mm) => (
        <text key={mm} x={scale.x(mm)} y={BOX.top + BOX.height + 22} textAnchor="middle">
          {format.length(mm)}
        </text>
      ))}
      <text x={BOX.left + BOX.width / 2} y={HEIGHT - 6} textAnchor="middle">
        {t('cover-chart-axes')}
      </text>
    </g>
  )
}

/** Greatest length against width: whole wood drawn full, with resin dashed, the client's size as a cross. */
export function FrontierChart(props: Props) {
  const scale = scales(props)
  const { wood, resin, client, chosen, onChoose } = props
  const choose = (event: React.PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect()
    const at = {
      x: ((event.clientX - box.left) / box.width) * WIDTH,
      y: ((event.clientY - box.top) / box.height) * HEIGHT,
    }
    const off = (point: FrontierPoint) =>
      Math.hypot(scale.x(point.widthMm) - at.x, scale.y(point.lengthMm) - at.y)
    const [nearest] = [...wood, ...resin].filter(fits).toSorted((a, b) => off(a) - off(b))
    if (nearest !== undefined) onChoose(nearest)
  }
  const [cx, cy] = [scale.x(client.widthMm), scale.y(client.lengthMm)]
  return (
    <svg
      className="heat-lines"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={t('cover-chart')}
      onPointerDown={choose}
    >
      <Axes scale={scale} />
      <path className="chart-core" d={linePath(wood, scale)} />
      <path className="chart-surface" d={linePath(resin, scale)} />
      <path
        className="chart-core"
        d={`M${cx - 8} ${cy - 8}L${cx + 8} ${cy + 8}M${cx - 8} ${cy + 8}L${cx + 8} ${cy - 8}`}
      />
      {chosen !== null && (
        <circle className="chart-chosen" cx={scale.x(chosen.widthMm)} cy={scale.y(chosen.lengthMm)} r={9} />
      )}
    </svg>
  )
}
