import type { HoldDown } from '../../../core/resin'
import { t } from '../../text/t'
import { type Format, useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'

const MM2_PER_CM2 = 100

function rowsOf(piece: HoldDown, format: Format) {
  const { bars, forcePerBarN, contactMm2PerBar, floatsFromMm } = piece
  const contact = `${Math.ceil(contactMm2PerBar / MM2_PER_CM2)} cm²`
  const held =
    bars === 0
      ? []
      : [
          { name: t('hold-force'), figure: format.force(piece.holdN) },
          {
            name: t('hold-bars'),
            figure: t('hold-bars-of', { count: bars, each: format.force(forcePerBarN), contact }),
          },
        ]
  const floats =
    floatsFromMm === null ? [] : [{ name: t('hold-floats-from'), figure: format.length(floatsFromMm) }]
  const lifts = piece.byLayer.map(({ forceN }, index) => ({
    name: t('hold-lift-at', { number: index + 1 }),
    figure: forceN > 0 ? format.force(forceN) : t('hold-stays'),
  }))
  return [...floats, ...lifts, ...held]
}

/** What keeps each piece of wood down while the resin is liquid. */
export function HoldPart({ pieces }: { readonly pieces: readonly HoldDown[] }) {
  const format = useFormat()
  const isLifted = pieces.some(({ bars }) => bars > 0)
  return (
    <PanelPart title={t('hold-title')} note={t('hold-note')}>
      {!isLifted && <p>{t('hold-none')}</p>}
      <ul className="cards">
        {pieces.map((piece) => (
          <li key={piece.pieceName} className="card">
            <strong>{piece.pieceName}</strong>
            <Figures rows={rowsOf(piece, format)} />
          </li>
        ))}
      </ul>
    </PanelPart>
  )
}
