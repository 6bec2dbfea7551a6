import type { Photo, Slab } from '../../core/plan'
import { removeStraightLine } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { ActionButton } from '../actions/ActionButton'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { PanelPart } from './PanelPart'

interface Props {
  readonly slab: Slab
  readonly photo: Photo
}

/** Straight things in the photo: they take the lens's bow out. */
export function LinesPart({ slab, photo }: Props) {
  return (
    <PanelPart title={t('line-title')} note={t('line-note')}>
      <ul className="cards">
        {photo.straightLines.map((line, n) => {
          const name = t('canvas-line', { number: String(n + 1) })
          const at = { slabId: slab.id, photoId: photo.id, lineId: line.id }
          const selection = { kind: 'line', lineId: line.id, point: null } as const
          return (
            <li key={line.id} className="row-head" data-place={placeName('straightLines', line.id)}>
              <button
                type="button"
                className="button button-small"
                onClick={() => sessionStore.setState({ selection })}
              >
                {name}
              </button>
              <span>{t('line-points', { count: line.pointsPx.length })}</span>
              <button
                type="button"
                className="button button-small"
                onClick={() => run(removeStraightLine, at)}
              >
                {t('remove')}
                <span className="unseen"> {name}</span>
              </button>
            </li>
          )
        })}
      </ul>
      <div className="button-row">
        <ActionButton id="tool-line" label={t('line-draw')} />
      </div>
    </PanelPart>
  )
}
