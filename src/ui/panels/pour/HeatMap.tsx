import { useEffect, useRef } from 'react'
import type { PourHeat } from '../../../core/resin'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { profileAt, temperatureAt } from './heatScale'

const COLUMNS = 240
const ROWS = 48
/** Each edge between two shades is a line of equal heat: so many kelvin apart that there are few enough to tell. */
const STEPS_K = [1, 2, 5, 10, 20]
const MOST_SHADES = 9

/** Paper to ink, by lightness alone: it reads the same without colour. */
const COOLEST = [247, 240, 222] as const
const HOTTEST = [58, 20, 8] as const

function shadeOf(share: number): readonly [number, number, number] {
  const mix = (k: 0 | 1 | 2): number => COOLEST[k] + (HOTTEST[k] - COOLEST[k]) * share
  return [mix(0), mix(1), mix(2)]
}

interface MapRange {
  readonly leastC: number
  readonly greatestC: number
  readonly depthMm: number
}

const stepOf = ({ leastC, greatestC }: MapRange): number =>
  STEPS_K.find((step) => (greatestC - leastC) / step <= MOST_SHADES) ?? 40

function paint(context: CanvasRenderingContext2D, { chart }: PourHeat, range: MapRange): void {
  const image = context.createImageData(COLUMNS, ROWS)
  const stepK = stepOf(range)
  const fromHour = chart.hours[0] ?? 0
  const toHour = chart.hours.at(-1) ?? fromHour
  for (let column = 0; column < COLUMNS; column += 1) {
    const profile = profileAt(chart.profiles, fromHour + ((toHour - fromHour) * (column + 0.5)) / COLUMNS)
    for (let row = 0; row < ROWS; row += 1) {
      const celsius = profile && temperatureAt(profile, range.depthMm * (1 - (row + 0.5) / ROWS))
      if (celsius === null || celsius === undefined) continue
      const risen = Math.floor((celsius - range.leastC) / stepK) * stepK
      const share = Math.min(1, Math.max(0, risen / Math.max(stepK, range.greatestC - range.leastC)))
      image.data.set([...shadeOf(share), 255], (row * COLUMNS + column) * 4)
    }
  }
  context.putImageData(image, 0, 0)
}

/** Temperature through the depth over time, in shades. */
export function HeatMap({ heat }: { readonly heat: PourHeat }) {
  const format = useFormat()
  const canvas = useRef<HTMLCanvasElement>(null)
  const depthMm = heat.layers.at(-1)?.toMm ?? 0
  const temperatures = heat.chart.profiles.flatMap(({ temperaturesC }) => temperaturesC)
  const leastC = temperatures.reduce((least, celsius) => Math.min(least, celsius), Infinity)
  const greatestC = temperatures.reduce((greatest, celsius) => Math.max(greatest, celsius), -Infinity)
  useEffect(() => {
    const context = canvas.current?.getContext('2d')
    if (context) paint(context, heat, { leastC, greatestC, depthMm })
  }, [heat, leastC, greatestC, depthMm])
  const words = { depth: format.length(depthMm), greatest: format.temperature(greatestC) }
  return (
    <figure className="heat-map">
      <canvas ref={canvas} width={COLUMNS} height={ROWS} role="img" aria-label={t('heat-map-label', words)} />
      <figcaption className="note">
        {t('heat-map-note', { step: format.kelvin(stepOf({ leastC, greatestC, depthMm })) })}
      </figcaption>
      <p className="heat-key">
        <span>{format.temperature(leastC)}</span>
        <span className="heat-ramp" aria-hidden="true" />
        <span>{format.temperature(greatestC)}</span>
      </p>
    </figure>
  )
}
