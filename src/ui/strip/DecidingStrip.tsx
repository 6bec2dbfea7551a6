import type { CoverageResult, OptionAccuracy, OptionResult, ResinResult } from '../../core/plan'
import { useStore } from 'zustand'
import { planStore } from '../../state/planStore'
import { useAnswerDoubted, useStageMarks } from '../stages/useStageMarks'
import { t } from '../text/t'
import { type Format, useFormat } from '../text/useFormat'
import { useOption, useSlab } from '../useActive'
import { readyValue } from '../readyValue'
import { usePlanResult } from '../usePlanResult'
import { VerdictLine } from './VerdictLine'

interface Figure {
  readonly key: 'resin' | 'waste' | 'wood' | 'cost'
  readonly label: string
  readonly text: string
  readonly plusMinus?: string | undefined
}

function figuresOf(option: OptionResult | undefined, format: Format, showsCost: boolean): readonly Figure[] {
  const resin = readyValue<ResinResult>(option?.resin)
  const coverage = readyValue<CoverageResult>(option?.coverage)
  const sure = readyValue<OptionAccuracy | null>(option?.accuracy)
  const none = t('figure-none')
  const figures: readonly Figure[] = [
    {
      key: 'resin',
      label: t('figure-resin'),
      text: resin === null ? none : format.volume(resin.mixLitres),
      plusMinus: format.plusMinus(sure?.resinSdLitres, 'volume'),
    },
    {
      key: 'waste',
      label: t('figure-waste'),
      text: coverage === null ? none : format.share(coverage.leftOverFraction),
    },
    {
      key: 'wood',
      label: t('figure-wood'),
      text: coverage === null ? none : format.area(coverage.mainInFinishedMm2),
      plusMinus: format.plusMinus(sure?.woodAreaSdMm2, 'area'),
    },
  ]
  return [...figures, ...(showsCost ? costFigure(resin, format) : [])]
}

function costFigure(resin: ResinResult | null, format: Format): readonly Figure[] {
  const costCents = resin?.costCents ?? null
  return costCents === null ? [] : [{ key: 'cost', label: t('figure-cost'), text: format.money(costCents) }]
}

/** The numbers that decide, in view at every stage. */
export function DecidingStrip() {
  const format = useFormat()
  const option = useOption()
  const slab = useSlab()
  const marks = useStageMarks()
  const isDoubted = useAnswerDoubted()
  const isDemo = useStore(planStore, ({ plan }) => plan.invented)
  // The prices of an example sheet are invented: in a job of one's own they decide nothing.
  const showsCost = isDemo || option?.resin.sheet.isExample === false
  const optionResult = usePlanResult().options.get(option?.id ?? '')
  return (
    <section className="decide" aria-label={t('decide-label')}>
      <VerdictLine option={optionResult} marks={marks} hasPhoto={slab !== null} isDoubted={isDoubted} />
      <dl className="decide-figures">
        {figuresOf(optionResult, format, showsCost).map((figure) => (
          <div key={figure.key} data-figure={figure.key}>
            <dt>
              <span className="for-wide">{figure.label}</span>
              <span className="for-phone">{t(`figure-short-${figure.key}`)}</span>
            </dt>
            <dd className={figure.text.length > 9 ? 'decide-long' : undefined}>
              {figure.text}
              {figure.plusMinus !== undefined && <span className="plus-minus"> {figure.plusMinus}</span>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
