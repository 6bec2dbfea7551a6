import { describeProblem, type Option, type OptionResult } from '../../../core/plan'
import { readyValue } from '../../readyValue'
import { t } from '../../text/t'
import { useDisplay } from '../../text/useDisplay'
import { useOption } from '../../useActive'
import { usePlanResult } from '../../usePlanResult'
import { PanelPart } from '../PanelPart'
import { CalendarPart } from './CalendarPart'
import { FormPart } from './FormPart'
import { HeatPart } from './HeatPart'
import { HoldPart } from './HoldPart'
import { LayersPart } from './LayersPart'
import { LogPart } from './LogPart'
import { PacksPart } from './PacksPart'
import { PlacePart } from './PlacePart'
import { PourSummary } from './PourSummary'
import { SheetPart } from './SheetPart'
import { type ShownPour, useShownPour } from './usePour'

function Cautions() {
  return (
    <PanelPart title={t('pour-caution-title')}>
      <ul className="cautions">
        <li>{t('pour-caution-sheet')}</li>
        <li>{t('pour-caution-runaway')}</li>
        <li>{t('pour-caution-vapour')}</li>
      </ul>
    </PanelPart>
  )
}

/** Whether what is shown is of now, of before, or not there at all. */
function Freshness({ result, isCurrent, problem }: ShownPour) {
  const display = useDisplay()
  if (problem !== null) return <p className="example-warning">{describeProblem(problem, display)}</p>
  if (isCurrent) return null
  return (
    <p className="working" role="status">
      {t(result === null ? 'pour-working' : 'pour-old')}
    </p>
  )
}

interface ResultsProps {
  readonly option: Option
  readonly shown: ShownPour
  readonly sdLitres: number | null
}

function Results({ option, shown, sdLitres }: ResultsProps) {
  const { result, isCurrent } = shown
  if (result === null) return null
  const { heat } = result
  return (
    <div className="pour-results" data-old={isCurrent ? undefined : ''}>
      <PourSummary option={option} result={result} sdLitres={sdLitres} />
      {heat === null ? (
        <p>{t('pour-heat-missing')}</p>
      ) : (
        <>
          <CalendarPart option={option} heat={heat} />
          <LayersPart option={option} heat={heat} />
        </>
      )}
      <HeatPart option={option} result={result} />
      <HoldPart pieces={result.holdDown} />
      <PacksPart option={option} result={result} />
      <LogPart option={option} result={result} />
    </div>
  )
}

const hasNothingToPour = (option: OptionResult | undefined): boolean =>
  option?.pour.state === 'blocked' && option.resin.state === 'ready'

const litresSd = (option: OptionResult | undefined): number | null =>
  readyValue(option?.accuracy)?.resinSdLitres ?? null

/** How deep, how hot, how much to mix, and when; and all that it follows from. */
export function PourPanel() {
  const option = useOption()
  const found = usePlanResult().options.get(option?.id ?? '')
  const shown = useShownPour(found)
  if (option === null) return null
  const isBlocked = found?.pour.state === 'blocked'
  return (
    <>
      {isBlocked ? (
        <p>{t(hasNothingToPour(found) ? 'pour-none' : 'pour-not-yet')}</p>
      ) : (
        <Freshness {...shown} />
      )}
      <Results option={option} shown={shown} sdLitres={litresSd(found)} />
      <Cautions />
      <SheetPart option={option} />
      <PlacePart option={option} />
      <FormPart option={option} result={readyValue(found?.resin)} />
    </>
  )
}
