import type { BuildResult, Slab } from '../../../core/plan'
import { formatNumber } from '../../../core/units'
import { setSlabFacts } from '../../../state/commands'
import { run } from '../../../state/run'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { MoneyField } from '../../fields/MoneyField'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { changeWood, useBuildSlab } from './useBuild'

type Wood = Slab['wood']

function SoldFields({ slab }: { readonly slab: Slab }) {
  const { soldBy, yardRule, tally } = slab.wood
  return (
    <>
      <MoneyField
        label={bt('slab-price')}
        cents={slab.priceCents}
        onChange={(priceCents) => run(setSlabFacts, { slabId: slab.id, facts: { priceCents } })}
      />
      <ChoiceGroup<Wood['soldBy']>
        label={bt('slab-sold')}
        value={soldBy}
        onChange={(value) => changeWood(slab.id, { soldBy: value })}
        options={(['piece', 'board-foot', 'cubic-metre', 'kilogram'] as const).map((value) => ({
          value,
          label: bt(`sold-${value}`),
        }))}
      />
      <ChoiceGroup<Wood['yardRule']>
        label={bt('slab-rule')}
        value={yardRule}
        onChange={(value) => changeWood(slab.id, { yardRule: value })}
        options={(['mean-width', 'longest-widest'] as const).map((value) => ({
          value,
          label: bt(`rule-${value}`),
        }))}
      />
      <ChoiceGroup<Wood['tally']>
        label={bt('slab-tally')}
        value={tally}
        onChange={(value) => changeWood(slab.id, { tally: value })}
        options={(['exact', 'surface-feet'] as const).map((value) => ({
          value,
          label: bt(`tally-${value}`),
        }))}
      />
    </>
  )
}

/** How the yard measures and sells the slab, and what of its money ends in the table. */
export function YardPart({ price }: { readonly price: BuildResult['price'] | null }) {
  const format = useFormat()
  const slab = useBuildSlab()
  if (slab === null) return null
  const { measure, wood } = price ?? { measure: null, wood: null }
  return (
    <PanelPart title={bt('slab-title')}>
      <SoldFields slab={slab} />
      {measure !== null && (
        <Figures
          rows={[
            {
              name: bt('slab-measure'),
              figure: bt('slab-board-feet', {
                feet: formatNumber(measure.boardFeet, { decimals: 1 }),
                metres: formatNumber(measure.cubicMetres, { decimals: 3 }),
              }),
            },
            ...(wood === null
              ? []
              : [
                  { name: bt('slab-in-table'), figure: format.money(wood.inTableCents) },
                  { name: bt('slab-waste'), figure: format.money(wood.wasteCents) },
                ]),
          ]}
        />
      )}
    </PanelPart>
  )
}
