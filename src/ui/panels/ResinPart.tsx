import { GREATEST_LENGTH_MM, type Option, type ResinResult } from '../../core/plan'
import { setLeastJoint, setResin } from '../../state/commands'
import { run } from '../../state/run'
import { LengthField, OptionalLengthField } from '../fields/LengthField'
import { PercentField } from '../fields/PercentField'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { Figures } from './Figures'
import { PanelPart } from './PanelPart'
import { useIssueAt } from './useIssues'

interface Props {
  readonly option: Option
  readonly result: ResinResult | null
  /** How sure the resin to mix is, as far as the photo goes; undefined: not known. */
  readonly sdLitres: number | undefined
}

interface ResinFiguresProps {
  readonly result: ResinResult
  readonly sdLitres: number | undefined
  /** Its prices are invented too. */
  readonly isExample: boolean
}

function ResinFigures({ result, sdLitres, isExample }: ResinFiguresProps) {
  const format = useFormat()
  const flood =
    result.floodLitres > 0 ? [{ name: t('resin-flood'), figure: format.volume(result.floodLitres) }] : []
  const cost =
    result.costCents === null
      ? []
      : [
          {
            name: t(isExample ? 'resin-cost-example' : 'resin-cost'),
            figure: format.money(result.costCents),
          },
        ]
  return (
    <Figures
      rows={[
        { name: t('resin-edges'), figure: format.volume(result.edgeGapLitres) },
        { name: t('resin-voids'), figure: format.volume(result.voidLitres) },
        ...flood,
        ...(result.clearanceLitres > 0
          ? [{ name: t('resin-clearance'), figure: format.volume(result.clearanceLitres) }]
          : []),
        ...(result.underLitres > 0
          ? [{ name: t('resin-under'), figure: format.volume(result.underLitres) }]
          : []),
        {
          name: t(result.isMeasured ? 'resin-measured' : 'resin-gaps'),
          figure: format.volume(result.gapLitres),
        },
        {
          name: t('resin-mix'),
          figure: format.volume(result.mixLitres),
          plusMinus: format.plusMinus(sdLitres, 'volume'),
          isTotal: true,
        },
        ...(result.mixKg === null ? [] : [{ name: t('resin-mass'), figure: format.mass(result.mixKg) }]),
        ...cost,
      ]}
    />
  )
}

function ResinFields({ option }: { readonly option: Option }) {
  const issue = useIssueAt()('options', option.id, 'resin')
  const { resin } = option
  const set = (changes: Partial<Option['resin']>) => run(setResin, { optionId: option.id, resin: changes })
  return (
    <>
      <div className="field-pairs">
        <OptionalLengthField
          label={t('resin-thickness')}
          placeholder={t('resin-thickness-as-slab')}
          valueMm={resin.castThicknessMm}
          limits={{ leastMm: 1, greatestMm: GREATEST_LENGTH_MM }}
          issue={issue}
          onChange={(castThicknessMm) => set({ castThicknessMm })}
        />
        <PercentField
          label={t('resin-loss')}
          fraction={resin.lossFraction}
          onChange={(lossFraction) => set({ lossFraction })}
        />
        <LengthField
          label={t('resin-least-joint')}
          valueMm={option.leastJointMm}
          limits={{ leastMm: 0, greatestMm: 200 }}
          onChange={(leastJointMm) => run(setLeastJoint, { optionId: option.id, leastJointMm })}
        />
      </div>
    </>
  )
}

/** What is poured into the gaps, and how much of it. */
export function ResinPart({ option, result, sdLitres }: Props) {
  return (
    <PanelPart title={t('resin-title')} note={t('resin-note')}>
      {result !== null && (
        <ResinFigures result={result} sdLitres={sdLitres} isExample={option.resin.sheet.isExample} />
      )}
      <ResinFields option={option} />
      <p className="note">{t('resin-caution')}</p>
    </PanelPart>
  )
}
