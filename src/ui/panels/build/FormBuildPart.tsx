import type { BuildResult, Option } from '../../../core/plan'
import { LengthField } from '../../fields/LengthField'
import { type Format, useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { MoreInputs } from '../pour/MoreInputs'
import { bt } from './bt'
import { changeForm } from './useBuild'

type Form = NonNullable<BuildResult['form']>

function FormFields({ option }: { readonly option: Option }) {
  const { form } = option
  return (
    <MoreInputs title={bt('form-inputs')}>
      <div className="field-pairs">
        <LengthField
          label={bt('form-above')}
          valueMm={form.aboveCastMm}
          limits={{ leastMm: 0, greatestMm: 500 }}
          onChange={(aboveCastMm) => changeForm(option.id, { aboveCastMm })}
        />
        <LengthField
          label={bt('form-beyond')}
          valueMm={form.baseBeyondMm}
          limits={{ leastMm: 0, greatestMm: 500 }}
          onChange={(baseBeyondMm) => changeForm(option.id, { baseBeyondMm })}
        />
        <LengthField
          label={bt('form-backing')}
          valueMm={form.backingMm}
          limits={{ leastMm: 10, greatestMm: 1000 }}
          onChange={(backingMm) => changeForm(option.id, { backingMm })}
        />
        <LengthField
          label={bt('form-screw-every')}
          valueMm={form.screwEveryMm}
          limits={{ leastMm: 20, greatestMm: 2000 }}
          onChange={(screwEveryMm) => changeForm(option.id, { screwEveryMm })}
        />
      </div>
    </MoreInputs>
  )
}

function jointRows({ base, stripJointsMm }: NonNullable<Form['plan']>, format: Format) {
  const strips = Object.values(stripJointsMm).flat()
  const wet = (at: number) => base.wetMm[at] ?? 0
  return [
    ...(base.jointsMm.length === 0
      ? []
      : [
          {
            name: bt('form-joints'),
            figure: base.jointsMm
              .map((mm, at) => bt('form-joints-wet', { at: format.length(mm), wet: format.length(wet(at)) }))
              .join(', '),
          },
        ]),
    ...(strips.length === 0
      ? []
      : [{ name: bt('form-strip-joints'), figure: strips.map((mm) => format.length(mm)).join(', ') }]),
  ]
}

function planRows(plan: NonNullable<Form['plan']>, format: Format) {
  return [
    {
      name: bt('form-base'),
      figure: `${format.length(plan.baseLengthMm)} × ${format.length(plan.baseWidthMm)}`,
    },
    { name: bt('form-side-height'), figure: format.length(plan.sideHeightMm) },
    ...jointRows(plan, format),
    ...(plan.jointTapeMm > 0 ? [{ name: bt('form-tape'), figure: format.length(plan.jointTapeMm) }] : []),
    { name: bt('form-release'), figure: format.area(plan.releaseAreaMm2) },
    { name: bt('form-screws'), figure: String(plan.screws) },
    { name: bt('form-drip'), figure: format.area(plan.dripSheetAreaMm2) },
    { name: bt('form-push'), figure: format.force(plan.load.thrustNPerM) },
    { name: bt('form-pull'), figure: format.force(plan.load.pullPerScrewN) },
  ]
}

/** Sizes of the form, what goes into it, and how it is loaded. */
export function FormBuildPart({ option, form }: { readonly option: Option; readonly form: Form | null }) {
  const format = useFormat()
  return (
    <PanelPart title={bt('form-title')}>
      {form === null ? (
        <p>{bt('form-none')}</p>
      ) : (
        <>
          {form.plan === null && <p>{bt('form-dams')}</p>}
          <Figures
            rows={[
              ...(form.plan === null ? [] : planRows(form.plan, format)),
              { name: bt('form-caulk'), figure: format.length(form.caulkMm) },
            ]}
          />
          {form.plan !== null && <p className="note">{bt('form-pull-note')}</p>}
          {form.buildRound && <p className="example-warning">{bt('form-round')}</p>}
        </>
      )}
      <FormFields option={option} />
    </PanelPart>
  )
}
