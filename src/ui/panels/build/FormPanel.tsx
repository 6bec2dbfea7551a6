import '../../styles/build.css'
import type { BuildResult, Option } from '../../../core/plan'
import { useFormat } from '../../text/useFormat'
import { useOption } from '../../useActive'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { FlattenPart } from './FlattenPart'
import { FormBuildPart } from './FormBuildPart'
import { Freshness } from './Freshness'
import { MovementPart } from './MovementPart'
import { SheetsPart } from './SheetsPart'
import { StandingPart } from './StandingPart'
import { StockPart } from './StockPart'
import { useShownBuild } from './useBuild'
import { WayInPart } from './WayInPart'
import { WeightPart } from './WeightPart'
import { WoodPart } from './WoodPart'

function Summary({ result }: { readonly result: BuildResult }) {
  const format = useFormat()
  const { form, weight, wood, flattening } = result
  const sheets = form?.cutting?.sheets.length ?? 0
  const most = wood.movements.reduce((best, { seasonMm }) => Math.max(best, Math.abs(seasonMm)), 0)
  const flat = flattening.whole
  return (
    <PanelPart title={bt('short-title')}>
      <Figures
        rows={[
          {
            name: bt('short-form'),
            figure: form === null ? bt('short-no-form') : bt('short-sheets', { count: sheets }),
          },
          { name: bt('short-top'), figure: format.mass(weight.topKg), isTotal: true },
          ...(most > 0
            ? [{ name: bt('short-season'), figure: format.length(most, { precision: 0.1 }) }]
            : []),
          ...(flat === null ? [] : [{ name: bt('short-flat'), figure: format.length(flat.flatMm) }]),
        ]}
      />
    </PanelPart>
  )
}

function Results({ option, result }: { readonly option: Option; readonly result: BuildResult }) {
  return (
    <>
      <Summary result={result} />
      {result.form !== null && <SheetsPart form={result.form} />}
      <FormBuildPart option={option} form={result.form} />
      <WeightPart weight={result.weight} />
      <MovementPart wood={result.wood} />
    </>
  )
}

const NOTHING_YET = { wood: null, flattening: null, standing: null } as const

/** The form from sheets, weights, wood, what it stands on and whether it goes in; and all that they follow from. */
export function FormPanel() {
  const option = useOption()
  const shown = useShownBuild(option?.id ?? '')
  if (option === null) return null
  const { result } = shown
  const { wood, flattening, standing } = result ?? NOTHING_YET
  return (
    <>
      <Freshness {...shown} />
      {result !== null && (
        <div className="build-results" data-old={shown.isCurrent ? undefined : ''}>
          <Results option={option} result={result} />
        </div>
      )}
      <StockPart />
      <WoodPart option={option} wood={wood} />
      <FlattenPart option={option} flattening={flattening} />
      <StandingPart option={option} standing={standing} />
      <WayInPart option={option} standing={standing} />
    </>
  )
}
