import type { Option, PourResult } from '../../../core/plan'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { PercentField } from '../../fields/PercentField'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { changeResin } from './usePour'

interface PackRowsProps {
  readonly packs: NonNullable<PourResult['packs']>
  readonly isExample: boolean
}

function PackRows({ packs, isExample }: PackRowsProps) {
  const format = useFormat()
  if (packs.packs.length === 0) return <p>{t('packs-none')}</p>
  return (
    <Figures
      rows={[
        ...packs.packs.map(({ pack, count }) => ({
          name: t('packs-row', { count, name: pack.name }),
          figure: format.money(pack.priceCents * count),
        })),
        {
          name: t(isExample ? 'packs-cost-example' : 'packs-cost'),
          figure: format.money(packs.costCents),
          isTotal: true,
        },
        { name: t('packs-left'), figure: format.volume(packs.leftOverLitres) },
      ]}
    />
  )
}

/** The cheapest packs that cover what is needed. */
export function PacksPart({ option, result }: { readonly option: Option; readonly result: PourResult }) {
  const { resin } = option
  return (
    <PanelPart title={t('packs-title')}>
      {result.packs === null ? (
        <p>{t('packs-unknown')}</p>
      ) : (
        <PackRows packs={result.packs} isExample={resin.sheet.isExample} />
      )}
      <div className="field-pairs">
        <OptionalNumberField
          label={t('packs-have')}
          value={resin.haveLitres}
          limits={{ least: 0, greatest: 5000 }}
          suffix={t('unit-litres')}
          onChange={(haveLitres) => changeResin(option.id, { haveLitres: haveLitres ?? 0 })}
        />
        <PercentField
          label={t('packs-margin')}
          fraction={resin.packMarginFraction}
          onChange={(packMarginFraction) => changeResin(option.id, { packMarginFraction })}
        />
      </div>
    </PanelPart>
  )
}
