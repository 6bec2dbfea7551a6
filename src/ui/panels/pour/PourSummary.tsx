import type { Option, PourResult } from '../../../core/plan'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bandText } from './layerFigures'
import { hourWords } from './usePour'

interface Props {
  readonly option: Option
  readonly result: PourResult
  /** How sure the litres are, as far as the photo goes; null: not known, or measured on the dry fit. */
  readonly sdLitres: number | null
}

/** The pour in a few lines. */
export function PourSummary({ option, result, sdLitres }: Props) {
  const format = useFormat()
  const when = hourWords(option.resin)
  const { heat, need } = result
  const mix =
    need === null
      ? []
      : [
          {
            name: t('pour-summary-mix'),
            figure: [format.volume(need.mixLitres), format.plusMinus(sdLitres, 'volume')]
              .filter((part) => part !== undefined)
              .join(' '),
            isTotal: true,
          },
        ]
  if (heat === null) return <Figures rows={mix} />
  const depths = heat.layers.map(({ fromMm, toMm }) => `${format.length(fromMm)}–${format.length(toMm)}`)
  const hottest = heat.layers.reduce((best, layer) => (layer.corePeakC > best.corePeakC ? layer : best))
  const due = (name: string, hour: number | null) =>
    hour === null ? [] : [{ name, figure: t('pour-about-plain', { value: when(hour) }) }]
  return (
    <PanelPart title={t('pour-summary-title')}>
      <Figures
        rows={[
          { name: t('pour-summary-pours'), figure: `${heat.layers.length}: ${depths.join(', ')}` },
          {
            name: t('pour-summary-deepest'),
            figure: t(`pour-deepest-by-${heat.limit.cappedBy}`, {
              depth: format.length(heat.limit.planMm),
              sheet: format.length(heat.limit.sheetMm),
            }),
          },
          ...mix,
          { name: t('pour-summary-first'), figure: when(heat.layers[0]?.startHour ?? 0) },
          {
            name: t('pour-summary-core'),
            figure: t('pour-about', {
              value: format.temperature(hottest.corePeakC),
              band: bandText(hottest.corePeakBandC, format.temperature),
            }),
          },
          ...due(t('pour-summary-demould'), heat.demouldHour),
          ...due(t('pour-summary-flatten'), heat.flattenHour),
        ]}
      />
    </PanelPart>
  )
}
