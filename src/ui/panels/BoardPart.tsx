import { GREATEST_LENGTH_MM, type Slab } from '../../core/plan'
import { removeBoard, setBoard } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { ActionButton } from '../actions/ActionButton'
import { useStore } from 'zustand'
import { LengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { PanelPart } from './PanelPart'

type Board = Slab['boards'][number]

interface BoardSize {
  readonly lengthMm: number
  readonly widthMm: number
  readonly thicknessMm: number
}

const SIDE_LIMITS = { leastMm: 20, greatestMm: GREATEST_LENGTH_MM }
const THICKNESS_LIMITS = { leastMm: 0, greatestMm: 500 }

interface SizeProps {
  readonly size: BoardSize
  readonly onChange: (changes: Partial<BoardSize>) => void
}

function BoardSizeFields({ size, onChange }: SizeProps) {
  return (
    <div className="field-grid">
      <LengthField
        label={t('board-length')}
        valueMm={size.lengthMm}
        limits={SIDE_LIMITS}
        onChange={(lengthMm) => onChange({ lengthMm })}
      />
      <LengthField
        label={t('board-width')}
        valueMm={size.widthMm}
        limits={SIDE_LIMITS}
        onChange={(widthMm) => onChange({ widthMm })}
      />
      <LengthField
        label={t('board-thickness')}
        valueMm={size.thicknessMm}
        limits={THICKNESS_LIMITS}
        onChange={(thicknessMm) => onChange({ thicknessMm })}
      />
    </div>
  )
}

function LaidBoard({ slab, board }: { readonly slab: Slab; readonly board: Board }) {
  const corner = slab.marks.find(({ id }) => id === board.cornerIds[0])
  const size = { lengthMm: board.lengthMm, widthMm: board.widthMm, thicknessMm: corner?.heightMm ?? 0 }
  const at = { slabId: slab.id, boardId: board.id }
  return (
    <div className="card" data-place={placeName('boards', board.id)}>
      <div className="row-head">
        <strong>{board.name}</strong>
        <button type="button" className="button button-small" onClick={() => run(removeBoard, at)}>
          {t('remove')}
          <span className="unseen"> {board.name}</span>
        </button>
      </div>
      <BoardSizeFields size={size} onChange={(changes) => run(setBoard, { ...at, ...changes })} />
    </div>
  )
}

function NextBoard() {
  const size = useStore(sessionStore, (session) => session.boardSize)
  return (
    <>
      <BoardSizeFields
        size={size}
        onChange={(changes) => sessionStore.setState({ boardSize: { ...size, ...changes } })}
      />
      <div className="button-row">
        <ActionButton id="tool-board" label={t('board-tap-corners')} className="button-main" />
      </div>
    </>
  )
}

/** A rectangle of known size that lies on the slab. */
export function BoardPart({ slab }: { readonly slab: Slab }) {
  return (
    <PanelPart title={t('board-title')} note={t('board-note')}>
      {slab.boards.map((board) => (
        <LaidBoard key={board.id} slab={slab} board={board} />
      ))}
      {slab.boards.length === 0 && <NextBoard />}
    </PanelPart>
  )
}
