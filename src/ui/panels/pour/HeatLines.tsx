import type { PourHeat } from '../../../core/resin'
import { clockText } from '../../../core/plan'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { type ChartBox, degreeTicks, type HeatScale, heatScale, hourTicks } from './heatScale'

const WIDTH = 640
const HEIGHT = 300
/** The phone's larger letters have room left of it and below. */
const BOX: ChartBox = { left: 74, top: 14, width: 544, height: 244 }
const BOTTOM = BOX.top + BOX.height
const RIGHT = BOX.left + BOX.width

const fixed = (value: number): string => value.toFixed(1)

function linePath(scale: HeatScale, hours: readonly number[], values: readonly number[]): string {
  return hours
    .map((hour, k) => `${k === 0 ? 'M' : 'L'}${fixed(scale.x(hour))} ${fixed(scale.y(values[k] ?? 0))}`)
    .join('')
}

function Axes({ scale }: { readonly scale: HeatScale }) {
  const format = useFormat()
  return (
    <g className="chart-axes">
      {degreeTicks(scale).map((celsius) => (
        <g key={celsius}>
          <line x1={BOX.left} x2={RIGHT} y1={scale.y(celsius)} y2={scale.y(celsius)} />
          <text x={BOX.left - 6} y={scale.y(celsius) + 5} textAnchor="end">
            {format.temperature(celsius)}
          </text>
        </g>
      ))}
      {hourTicks(scale).map((hour) => (
        <g key={hour}>
          <line x1={scale.x(hour)} x2={scale.x(hour)} y1={BOTTOM} y2={BOTTOM + 5} />
          <text x={scale.x(hour)} y={BOTTOM + 20} textAnchor="middle">
            {hour % 24 === 0 ? t('heat-day', { day: hour / 24 + 1 }) : clockText(hour)}
          </text>
        </g>
      ))}
    </g>
  )
}

/** Where each pour begins: a mark on the axis, with its number. */
function PourMarks({ heat, scale }: { readonly heat: PourHeat; readonly scale: HeatScale }) {
  return (
    <g className="chart-pours">
      {heat.layers.map(({ layer, startHour }) => (
        <g key={layer}>
          <line x1={scale.x(startHour)} x2={scale.x(startHour)} y1={BOX.top} y2={BOTTOM} />
          <text x={scale.x(startHour) + 4} y={BOX.top + 17}>
            {t('heat-pour-mark', { number: layer })}
          </text>
        </g>
      ))}
    </g>
  )
}

/** The lines are told apart by their dashes and by their names at the hottest place, not by colour. */
function Lines({ heat, scale }: { readonly heat: PourHeat; readonly scale: HeatScale }) {
  const { hours, coreC, surfaceC, coreLeastC, coreGreatestC } = heat.chart
  const band = `${linePath(scale, hours, coreGreatestC)}${linePath(
    scale,
    hours.toReversed(),
    coreLeastC.toReversed(),
  ).replace('M', 'L')}Z`
  const peak = coreC.indexOf(Math.max(...coreC))
  const x = scale.x(hours[peak] ?? 0)
  const isLeft = x < BOX.left + BOX.width * 0.75
  const label = { x: x + (isLeft ? 8 : -8), textAnchor: isLeft ? 'start' : 'end' } as const
  return (
    <>
      <path className="chart-band" d={band} fill="url(#heat-hatch)" />
      <path className="chart-core" d={linePath(scale, hours, coreC)} />
      <path className="chart-surface" d={linePath(scale, hours, surfaceC)} />
      <text className="chart-name" {...label} y={scale.y(coreC[peak] ?? 0) - 8}>
        {t('heat-core')}
      </text>
      <text className="chart-name" {...label} y={scale.y(Math.min(...surfaceC.slice(peak, peak + 1))) + 20}>
        {t('heat-surface')}
      </text>
    </>
  )
}

function Limit({ limitC, scale }: { readonly limitC: number; readonly scale: HeatScale }) {
  const format = useFormat()
  const limit = format.temperature(limitC)
  if (limitC > scale.greatestC) {
    return (
      <text x={RIGHT} y={BOX.top + 40} textAnchor="end">
        {t('heat-limit-far', { limit })}
      </text>
    )
  }
  return (
    <g className="chart-limit">
      <line x1={BOX.left} x2={RIGHT} y1={scale.y(limitC)} y2={scale.y(limitC)} />
      <text x={RIGHT} y={scale.y(limitC) - 5} textAnchor="end">
        {t('heat-limit', { limit })}
      </text>
    </g>
  )
}

/** Core and surface over the hours, with the band of the core. */
export function HeatLines({ heat, label }: { readonly heat: PourHeat; readonly label: string }) {
  const limitC = heat.fit.nominal.coreLimitC
  const scale = heatScale(heat.chart, limitC, BOX)
  return (
    <svg className="heat-lines" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      <defs>
        <pattern
          id="heat-hatch"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line x1="0" y1="0" x2="0" y2="6" className="chart-hatch" />
        </pattern>
      </defs>
      <Axes scale={scale} />
      <PourMarks heat={heat} scale={scale} />
      <Limit limitC={limitC} scale={scale} />
      <Lines heat={heat} scale={scale} />
    </svg>
  )
}
