import { useStore } from 'zustand'
import { GREATEST_LENGTH_MM, type Slab, type SlabScaleResult } from '../../core/plan'
import { removeBoard, setBoard } from '../../state/commands'
import type { BoardSize } from '../../state/preferences'
import { run } from '../../state/run'
import { sessionStore, setPreferences, type TypedBoard, wholeBoard } from '../../state/sessionStore'
import { ActionButton } from '../actions/ActionButton'
import { LengthField, OptionalLengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { DistancesPart } from './DistancesPart'
import { OwnReferences } from './OwnReferences'
import { PanelPart } from './PanelPart'
import { tapedMarks } from './tapedPairs'

type Board = Slab['boards'][number]

const LIMITS = {
  lengthMm: { leastMm: 20, greatestMm: GREATEST_LENGTH_MM },
  widthMm: { leastMm: 20, greatestMm: GREATEST_LENGTH_MM },
  thicknessMm: { leastMm: 0, greatestMm: 500 },
} as const

const LABELS = {
  lengthMm: 'board-length',
  widthMm: 'board-width',
  thicknessMm: 'board-thickness',
} as const

const SIDES = ['lengthMm', 'widthMm', 'thicknessMm'] as const

function LaidBoard({ slab, board }: { readonly slab: Slab; readonly board: Board }) {
  const corner = slab.marks.find(({ id }) => id === board.cornerIds[0])
  const size: BoardSize = { ...board, thicknessMm: corner?.heightMm ?? 0 }
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
      <div className="field-grid">
        {SIDES.map((side) => (
          <LengthField
            key={side}
            label={t(LABELS[side])}
            valueMm={size[side]}
            limits={LIMITS[side]}
            onChange={(mm) => run(setBoard, { ...at, [side]: mm })}
          />
        ))}
      </div>
    </div>
  )
}

const sayBoard = (said: TypedBoard): void => sessionStore.setState({ boardSize: said })

function NextBoard() {
  const format = useFormat()
  const said = useStore(sessionStore, (session) => session.boardSize)
  const own = useStore(sessionStore, (session) => session.ownBoards)
  return (
    <>
      <OwnReferences<BoardSize>
        own={own}
        sizeText={(size) => SIDES.map((side) => format.length(size[side])).join(' × ')}
        typed={wholeBoard(said)}
        onTake={sayBoard}
        onChange={(ownBoards) => setPreferences({ ownBoards })}
      />
      <div className="field-grid">
        {SIDES.map((side) => (
          <OptionalLengthField
            key={side}
            label={t(LABELS[side])}
            valueMm={said[side]}
            limits={LIMITS[side]}
            onChange={(mm) => sayBoard({ ...said, [side]: mm })}
          />
        ))}
      </div>
      <div className="button-row">
        <ActionButton id="tool-board" label={t('board-tap-corners')} className="button-main" />
      </div>
    </>
  )
}

interface Props {
  readonly slab: Slab
  readonly scale: SlabScaleResult | null
}

/** One distance between two marks far apart tells whether the board's size and corners are right. */
function BoardCheck({ slab, scale }: Props) {
  const marks = tapedMarks(slab)
  return (
    <>
      <PanelPart title={t('board-check')} note={t('board-check-note')}>
        <div className="button-row">
          <ActionButton
            id="tool-mark"
            label={t('size-place-mark')}
            className={marks.length < 2 ? 'button-main' : ''}
          />
        </div>
      </PanelPart>
      <DistancesPart slab={slab} scale={scale} />
    </>
  )
}

/** A rectangle of known size that lies on the slab. */
export function BoardPart({ slab, scale }: Props) {
  return (
    <>
      <PanelPart title={t('board-title')} note={t('board-note')}>
        {slab.boards.map((board) => (
          <LaidBoard key={board.id} slab={slab} board={board} />
        ))}
        {slab.boards.length === 0 && <NextBoard />}
      </PanelPart>
      {slab.boards.length > 0 && <BoardCheck slab={slab} scale={scale} />}
    </>
  )
}
