import type { Photo, Slab } from '../../core/plan'
import { keepClick } from '../../state/commands'
import { planStore } from '../../state/planStore'
import { run } from '../../state/run'
import { refineMarks } from '../canvas/refineAfter'
import { t } from '../text/t'

type Seen = Photo['observations'][number]

function keep(slab: Slab, photo: Photo, markId: string, isKept: boolean): void {
  const place = { slabId: slab.id, photoId: photo.id }
  const { plan } = planStore.getState()
  run(keepClick, { ...place, markId, isKept })
  if (!isKept && planStore.getState().plan !== plan) refineMarks(place, [markId])
}

interface Props {
  readonly slab: Slab
  readonly photo: Photo
  readonly seen: Seen
  readonly name: string
}

/** What the program made of a click, and the switch that leaves the mark where it was clicked. */
export function ClickSign({ slab, photo, seen, name }: Props) {
  const { kind } = seen.refinement
  const isKept = kind === 'kept'
  return (
    <span className="click-sign" data-click={kind}>
      <span>{t(`click-${kind}`)}</span>
      <button
        type="button"
        className="button button-small"
        aria-pressed={isKept}
        onClick={() => keep(slab, photo, seen.markId, !isKept)}
      >
        {t('click-leave')}
        <span className="unseen"> {name}</span>
      </button>
    </span>
  )
}
