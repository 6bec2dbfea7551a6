import { regionBounds } from '../../core/geometry'
import type { CoverageResult, Option, PiecesResult, SlabPiece } from '../../core/plan'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { layIntoGap } from './layIntoGap'

interface Props {
  readonly option: Option
  readonly pieces: PiecesResult
  readonly coverage: CoverageResult | null
}

function PieceRow({ option, pieces, coverage, piece }: Props & { readonly piece: SlabPiece }) {
  const format = useFormat()
  const { minX, minY, maxX, maxY } = regionBounds(piece.region)
  const gaps = coverage?.gaps ?? []
  return (
    <tr>
      <th scope="row">{piece.name}</th>
      <td className="number">{format.area(piece.areaMm2)}</td>
      <td className="number">
        {format.length(maxX - minX)} × {format.length(maxY - minY)}
      </td>
      <td className="number">
        {piece.use === 'offcut' ? (
          <button
            type="button"
            className="button button-small"
            disabled={gaps.length === 0}
            onClick={() => layIntoGap({ option, slabId: pieces.slabId, piece, gaps })}
          >
            {t('piece-lay')}
            <span className="unseen"> {piece.name}</span>
          </button>
        ) : (
          t(`piece-use-${piece.use}`)
        )}
      </td>
    </tr>
  )
}

/** What the slab falls into, and which offcut is to fill a gap. */
export function PieceList(props: Props) {
  return (
    <table className="pieces">
      <thead>
        <tr>
          <th scope="col">{t('piece-column-name')}</th>
          <th scope="col" className="number">
            {t('piece-column-area')}
          </th>
          <th scope="col" className="number">
            {t('piece-column-size')}
          </th>
          <th scope="col">
            <span className="unseen">{t('piece-column-use')}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {props.pieces.pieces.map((piece) => (
          <PieceRow key={piece.key} {...props} piece={piece} />
        ))}
      </tbody>
    </table>
  )
}
