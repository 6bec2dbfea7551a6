import type { BuildResult } from '../../../core/plan'
import { type CarrierShare, LOAD_CONSTANT_KG } from '../../../core/form'
import { formatNumber } from '../../../core/units'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { changeWood, useBuildSlab } from './useBuild'

type Weight = BuildResult['weight']

const TEAMS = [2, 3, 4] as const

const isAbove = (share: CarrierShare | undefined): boolean =>
  share !== undefined && (share.isAboveConstant || share.isAboveTeamGuide === true)

function Carriers({ weight }: { readonly weight: Weight }) {
  const format = useFormat()
  const rows = [
    { name: bt('weight-slab'), shares: weight.carriers.slab },
    { name: bt('weight-cast'), shares: weight.carriers.cast },
    { name: bt('weight-top'), shares: weight.carriers.top },
  ]
  return (
    <div className="table-scroll">
      <table className="carriers">
        <thead>
          <tr>
            <th scope="col">{bt('carriers-each')}</th>
            {TEAMS.map((count) => (
              <th key={count} scope="col" className="number">
                {bt('carriers-of', { count })}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, shares }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {TEAMS.map((count) => {
                const share = shares.find(({ carriers }) => carriers === count)
                return (
                  <td key={count} className="number">
                    {share === undefined ? '' : format.mass(share.kgEach)}
                    {isAbove(share) && <strong className="above"> {bt('carriers-above')}</strong>}
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function ScaleField() {
  const slab = useBuildSlab()
  if (slab === null) return null
  return (
    <OptionalNumberField
      label={bt('weight-own')}
      hint={bt('weight-own-hint')}
      value={slab.wood.massKg}
      limits={{ least: 0.1, greatest: 5000 }}
      suffix={bt('unit-kg')}
      onChange={(massKg) => changeWood(slab.id, { massKg })}
    />
  )
}

/** What everything weighs, and among how many it may be shared: a screening. */
export function WeightPart({ weight }: { readonly weight: Weight }) {
  const format = useFormat()
  return (
    <PanelPart title={bt('weight-title')}>
      <Figures
        rows={[
          {
            name: bt(weight.isSlabWeighed ? 'weight-slab-weighed' : 'weight-slab'),
            figure: format.mass(weight.slabKg),
          },
          ...weight.piecesKg.map(({ name, massKg }) => ({
            name: bt('weight-piece', { name }),
            figure: format.mass(massKg),
          })),
          { name: bt('weight-cast'), figure: format.mass(weight.castKg) },
          { name: bt('weight-top'), figure: format.mass(weight.topKg), isTotal: true },
          {
            name: bt('weight-density', { from: bt(`density-${weight.densityFrom}`) }),
            figure: bt('weight-kg-m3', { density: formatNumber(weight.woodKgPerM3) }),
          },
        ]}
      />
      <Carriers weight={weight} />
      <p className="caution">{bt('carriers-caution', { constant: format.mass(LOAD_CONSTANT_KG) })}</p>
      <ScaleField />
    </PanelPart>
  )
}
