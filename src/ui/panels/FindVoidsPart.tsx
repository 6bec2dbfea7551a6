import { useStore } from 'zustand'
import type { Photo } from '../../core/plan'
import { chooseProposedVoid } from '../../state/traceDesk'
import { type ProposedVoid, tracingOn, tracingStore } from '../../state/tracingStore'
import { acceptVoid, declineAllVoids, declineVoid, proposeVoids } from '../canvas'
import { sessionStore } from '../../state/sessionStore'
import { t } from '../text/t'

interface Props {
  readonly photo: Photo
}

/** Voids that the program proposes, to be judged one by one. */
export function FindVoidsPart({ photo }: Props) {
  const voids = useStore(tracingStore, (state) => tracingOn(state, photo.id).voids)
  const isLooking = useStore(tracingStore, (state) => state.isFindingVoids)
  return (
    <>
      <div className="button-row">
        <button type="button" className="button" disabled={isLooking} onClick={() => void proposeVoids()}>
          {t('voids-find')}
        </button>
      </div>
      {voids === null && <p className="note">{t('voids-note')}</p>}
      {voids?.length === 0 && <p role="status">{t('voids-none')}</p>}
      {voids !== null && voids.length > 0 && <Proposals voids={voids} />}
    </>
  )
}

function Proposals({ voids }: { readonly voids: readonly ProposedVoid[] }) {
  const chosen = useStore(tracingStore, (state) => state.chosenVoid)
  return (
    <>
      <p>{t('voids-left', { count: voids.length })}</p>
      <ul className="proposals">
        {voids.map(({ id, kind }, n) => {
          const name = t(`proposal-${kind}`, { number: String(n + 1) })
          return (
            <li key={id} data-selected={id === chosen ? '' : undefined}>
              <button type="button" className="button" aria-pressed={id === chosen} onClick={() => show(id)}>
                {name}
              </button>
              <button type="button" className="button" onClick={() => acceptVoid(id)}>
                {t('proposal-accept')}
                <span className="unseen"> {name}</span>
              </button>
              <button type="button" className="button" onClick={() => declineVoid(id)}>
                {t('proposal-decline')}
                <span className="unseen"> {name}</span>
              </button>
            </li>
          )
        })}
      </ul>
      <div className="button-row">
        <button type="button" className="button" onClick={declineAllVoids}>
          {t('voids-decline-all')}
        </button>
      </div>
    </>
  )
}

function show(id: string): void {
  chooseProposedVoid(id)
  sessionStore.setState({ tool: 'proposals', view: 'photo' })
}
