import type { BuildResult } from '../../../core/plan'
import { movementBandMm } from '../../../core/wood'
import { formatPercent } from '../../../core/units'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'

type Wood = BuildResult['wood']

/** How each piece will move, from its moisture now to that of the client's room. */
export function MovementPart({ wood }: { readonly wood: Wood }) {
  const format = useFormat()
  const change = (mm: number): string => {
    const text = format.length(Math.abs(mm), { precision: 0.1 })
    if (text === format.length(0, { precision: 0.1 })) return text
    return mm < 0 ? `−${text}` : `+${text}`
  }
  const share = (fraction: number) => formatPercent(fraction, { decimals: 1 })
  const most = wood.movements.reduce((best, { seasonMm }) => Math.max(best, Math.abs(seasonMm)), 0)
  const [least, greatest] = movementBandMm(most)
  const becomes = {
    name: bt('room-becomes'),
    figure: bt('room-span', { dry: share(wood.dryFraction), damp: share(wood.dampFraction) }),
  }
  const slot =
    wood.slotMm === null
      ? []
      : [{ name: bt('moves-slot'), figure: format.length(wood.slotMm, { precision: 0.1 }) }]
  return (
    <PanelPart title={bt('moves-title')}>
      {wood.movements.length === 0 ? (
        <p>{bt('moves-none')}</p>
      ) : (
        <>
          <div className="table-scroll">
            <table>
              <thead>
                <tr>
                  <th scope="col">{bt('moves-piece')}</th>
                  <th scope="col" className="number">
                    {bt('moves-across')}
                  </th>
                  <th scope="col" className="number">
                    {bt('moves-dry')}
                  </th>
                  <th scope="col" className="number">
                    {bt('moves-damp')}
                  </th>
                </tr>
              </thead>
              <tbody>
                {wood.movements.map(({ name, acrossMm, toDryMm, toDampMm }) => (
                  <tr key={name}>
                    <th scope="row">{name}</th>
                    <td className="number">{format.length(acrossMm)}</td>
                    <td className="number">{change(toDryMm)}</td>
                    <td className="number">{change(toDampMm)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <p className="note">
            {bt('moves-note', {
              band: `${format.length(least, { precision: 0.1 })}–${format.length(greatest, { precision: 0.1 })}`,
            })}
          </p>
        </>
      )}
      <Figures rows={[becomes, ...slot]} />
    </PanelPart>
  )
}
