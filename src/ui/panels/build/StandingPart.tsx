import type { BuildResult, Option } from '../../../core/plan'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { LengthField } from '../../fields/LengthField'
import { NumberField } from '../../fields/NumberField'
import { type Format, useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { changeStanding } from './useBuild'

type Standing = BuildResult['standing']
type Base = Option['standing']['base']

const INSET = { leastMm: 0, greatestMm: 20_000 }

function BaseFields({ option }: { readonly option: Option }) {
  const { base, placeMm } = option.standing
  const set = (changes: Partial<Base>) => changeStanding(option.id, { base: { ...base, ...changes } })
  return (
    <>
      <ChoiceGroup<Base['kind']>
        label={bt('stand-base')}
        value={base.kind}
        onChange={(kind) => set({ kind })}
        options={(['four-legs', 'two-frames', 'pedestal'] as const).map((value) => ({
          value,
          label: bt(`stand-${value}`),
        }))}
      />
      <div className="field-pairs">
        <LengthField
          label={bt('stand-inset-length')}
          valueMm={base.insetLengthMm}
          limits={INSET}
          onChange={(insetLengthMm) => set({ insetLengthMm })}
        />
        <LengthField
          label={bt('stand-inset-width')}
          valueMm={base.insetWidthMm}
          limits={INSET}
          onChange={(insetWidthMm) => set({ insetWidthMm })}
        />
        <NumberField
          label={bt('stand-mass')}
          value={base.massKg}
          limits={{ least: 0, greatest: 2000 }}
          suffix={bt('unit-kg')}
          onChange={(massKg) => set({ massKg })}
        />
        <LengthField
          label={bt('stand-place')}
          valueMm={placeMm}
          limits={{ leastMm: 300, greatestMm: 2000 }}
          onChange={(place) => changeStanding(option.id, { placeMm: place })}
        />
      </div>
    </>
  )
}

function rowsOf({ seats, stance, middleSagMm, endSagMm }: Standing, format: Format) {
  const sag = (name: string, mm: number | null) =>
    mm === null ? [] : [{ name, figure: format.length(mm, { precision: 0.1 }) }]
  const tips = stance?.worst?.tipsAtKg ?? null
  return [
    {
      name: bt('stand-seats'),
      figure: bt('stand-seats-of', {
        total: seats.total,
        side: seats.alongEachSide,
        end: seats.atEachEnd,
      }),
    },
    ...(stance === null
      ? []
      : [
          { name: bt('stand-stands'), figure: bt(stance.isStanding ? 'yes' : 'no') },
          {
            name: bt('stand-tips'),
            figure: tips === null ? bt('stand-tips-never') : format.mass(tips),
          },
        ]),
    ...sag(bt('stand-sag-middle'), middleSagMm),
    ...sag(bt('stand-sag-end'), endSagMm),
  ]
}

/** The base, who sits there, and whether it stands. */
export function StandingPart({ option, standing }: { option: Option; standing: Standing | null }) {
  const format = useFormat()
  return (
    <PanelPart title={bt('stand-title')}>
      <BaseFields option={option} />
      {standing !== null && <Figures rows={rowsOf(standing, format)} />}
      <p className="note">{bt('stand-note')}</p>
    </PanelPart>
  )
}
