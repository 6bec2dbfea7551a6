import { handOver, hasShareSheet } from '../../files/handOver'
import { t } from '../../text/t'
import { PanelPart } from '../PanelPart'

/** The plan to another device, without a server. */
export function HandOverPart() {
  return (
    <PanelPart title={t('hand-over')} note={t('hand-over-note')}>
      <div className="button-row">
        <button type="button" className="button" onClick={() => void handOver()}>
          {t(hasShareSheet() ? 'hand-over-share' : 'hand-over-file')}
        </button>
      </div>
    </PanelPart>
  )
}
