import { regionBounds } from '../../core/geometry'
import type { CoverageResult, PiecesResult, SlabPiece } from '../../core/plan'
import { layOffcut } from '../canvas'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'

interface Props {
  readonly pieces: PiecesResult
  readonly coverage: CoverageResult | null
}

function PieceRow({ coverage, piece }: Pick<Props, 'coverage'> & { readonly piece: SlabPiece }) {
  const format = useFormat()
  const { minX, minY, maxX, maxY } = regionBounds(piece.region)
  const name = piece.use === 'table' ? t('piece-of-table') : t('canvas-offcut', { name: piece.name })
  return (
    <li className="piece">
      <strong>{name}</strong>
      <span className="figure">{format.area(piece.areaMm2)}</span>
      <span className="note">
        {t('piece-about', { length: format.length(maxX - minX), width: format.length(maxY - minY) })}
      </span>
      {piece.use === 'offcut' ? (
        <button
          type="button"
          className="button button-small"
          disabled={(coverage?.gaps ?? []).length === 0}
          onClick={() => layOffcut(piece.key)}
        >
          {t('piece-lay')}
          <span className="unseen"> {name}</span>
        </button>
      ) : (
        <span className="note">{t(`piece-use-${piece.use}`)}</span>
      )}
    </li>
  )
}

/** What the slab falls into, and which offcut is to fill a gap. */
export function PieceList({ pieces, coverage }: Props) {
  return (
    <ul className="pieces">
      {pieces.pieces.map((piece) => (
        <PieceRow key={piece.key} coverage={coverage} piece={piece} />
      ))}
    </ul>
  )
}
