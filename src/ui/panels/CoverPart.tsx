import type { CoverageResult, OptionResult } from '../../core/plan'
import { t } from '../text/t'
import { readyValue } from '../readyValue'
import { useFormat } from '../text/useFormat'
import { Figures } from './Figures'
import { PanelPart } from './PanelPart'

interface Row {
  readonly name: string
  readonly figure: string
  readonly plusMinus?: string | undefined
  readonly isTotal?: boolean
}

/** Areas in the top, kept sides and short sides. */
export function CoverPart({ result }: { readonly result: OptionResult | undefined }) {
  const format = useFormat()
  if (result?.coverage.state !== 'ready') return null
  const cover: CoverageResult = result.coverage.value
  const placed: readonly Row[] =
    cover.placed.length === 0 ? [] : [{ name: t('cover-placed'), figure: format.area(cover.laidAreaMm2) }]
  const sure = readyValue(result.accuracy)
  const marginSure = format.plusMinus(sure?.marginSdMm, 'length')
  const spare: readonly Row[] =
    cover.spare === null
      ? []
      : [
          {
            name: t(cover.spare.isAtCorner ? 'cover-spare-corner' : 'cover-spare-side'),
            figure: format.length(cover.spare.distanceMm),
            plusMinus: marginSure,
          },
        ]
  const kept: readonly Row[] = cover.keptEdges.flatMap((edge) => [
    { name: t('cover-least-width'), figure: format.length(edge.leastWidthMm) },
    { name: t('cover-mean-width'), figure: format.length(edge.meanWidthMm) },
  ])
  const shortSides: readonly Row[] = cover.sideGaps.map((gap, n) => ({
    name: t('cover-side-gap', { side: t(`side-name-${gap.side}`) }),
    figure: format.length(gap.greatestDepthMm),
    plusMinus: n === 0 ? marginSure : undefined,
  }))
  return (
    <PanelPart title={t('cover-title')}>
      <Figures
        rows={[
          {
            name: t('cover-wood'),
            figure: format.area(cover.mainInFinishedMm2),
            plusMinus: format.plusMinus(sure?.woodAreaSdMm2, 'area'),
          },
          ...placed,
          { name: t('cover-edge-gaps'), figure: format.area(cover.edgeGapAreaMm2) },
          { name: t('cover-void-gaps'), figure: format.area(cover.voidGapAreaMm2) },
          { name: t('cover-top'), figure: format.area(cover.finishedAreaMm2), isTotal: true },
        ]}
      />
      <Figures rows={[...spare, ...kept.slice(0, 2), ...shortSides]} />
    </PanelPart>
  )
}
