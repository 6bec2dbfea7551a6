import { lazy, Suspense } from 'react'
import type { CoverageResult, Option, OptionResult, PiecesResult } from '../../core/plan'
import { setKerf } from '../../state/commands'
import { run } from '../../state/run'
import { LengthField } from '../fields/LengthField'
import { goToStage } from '../stages/goToStage'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { useOption } from '../useActive'
import { readyValue } from '../readyValue'
import { usePlanResult } from '../usePlanResult'
import { CutList } from './CutList'
import { Figures } from './Figures'
import { PanelPart } from './PanelPart'
import { PieceList } from './PieceList'
import { PlacementList } from './PlacementList'
import { ResinPart } from './ResinPart'

const FillPart = lazy(async () => ({ default: (await import('./fill/FillPart')).FillPart }))

function KerfField({ option }: { readonly option: Option }) {
  const [first] = option.cuts
  if (first === undefined) return null
  return (
    <LengthField
      label={t('cut-kerf')}
      hint={t('cut-kerf-hint')}
      valueMm={first.kerfMm}
      limits={{ leastMm: 0, greatestMm: 20 }}
      onChange={(kerfMm) => run(setKerf, { optionId: option.id, kerfMm })}
    />
  )
}

function NoCutsYet() {
  return (
    <>
      <p>{t('cuts-none-yet')}</p>
      <div className="button-row">
        <button type="button" className="button button-main" onClick={() => goToStage('table')}>
          {t('cuts-go-to-table')}
        </button>
      </div>
    </>
  )
}

interface PiecesProps {
  readonly option: Option
  readonly pieces: PiecesResult
  readonly coverage: CoverageResult | null
}

function PiecesPart({ option, pieces, coverage }: PiecesProps) {
  const format = useFormat()
  return (
    <PanelPart title={t('pieces-title')} note={t('pieces-note')}>
      <PieceList pieces={pieces} coverage={coverage} />
      <PlacementList option={option} coverage={coverage} />
      {coverage !== null && (
        <Figures
          rows={[
            { name: t('pieces-kerf'), figure: format.area(pieces.kerfAreaMm2) },
            {
              name: t('pieces-left-over'),
              figure: `${format.area(coverage.leftOverAreaMm2)}, ${format.share(coverage.leftOverFraction)}`,
            },
          ]}
        />
      )}
    </PanelPart>
  )
}

const resinSd = (result: OptionResult | undefined): number | undefined =>
  readyValue(result?.accuracy)?.resinSdLitres ?? undefined

/** Cut lines, what falls off, what fills the gaps, and the resin for the rest. */
export function CutsPanel() {
  const option = useOption()
  const result = usePlanResult().options.get(option?.id ?? '')
  if (option === null) return null
  const pieces = readyValue(result?.pieces)
  if (pieces === null) return <NoCutsYet />
  return (
    <>
      <PanelPart title={t('cuts-title')} note={t('cuts-note')}>
        <KerfField option={option} />
        <CutList option={option} pieces={pieces} />
        <p className="note">{t('cuts-caution')}</p>
      </PanelPart>
      <PiecesPart option={option} pieces={pieces} coverage={readyValue(result?.coverage)} />
      <Suspense fallback={<p>{t('loading')}</p>}>
        <FillPart option={option} />
      </Suspense>
      <ResinPart option={option} result={readyValue(result?.resin)} sdLitres={resinSd(result)} />
    </>
  )
}
