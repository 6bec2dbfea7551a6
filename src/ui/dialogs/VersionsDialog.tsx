import { useEffect, useState } from 'react'
import { goBackToVersion, type ListedVersion, listVersions } from '../../state/versions'
import { reporting } from '../files/reporting'
import { t } from '../text/t'
import { DialogFrame } from './DialogFrame'
import { momentText } from './momentText'

function whatIsIn({ plan }: ListedVersion): string {
  const lists = plan.options.map(({ cuts, placements }) => [cuts.length, placements.length] as const)
  return t('versions-count', {
    slabs: plan.slabs.length,
    cuts: lists.reduce((sum, [cuts]) => sum + cuts, 0),
    pieces: lists.reduce((sum, [, pieces]) => sum + pieces, 0),
  })
}

interface RowProps {
  readonly version: ListedVersion
  readonly onUse: () => void
}

function VersionRow({ version, onUse }: RowProps) {
  const when = momentText(version.savedAtMs)
  return (
    <li className="card">
      <div className="row-head">
        <strong>{when}</strong>
        <span className="note">{version.plan.name}</span>
      </div>
      <p className="note">{whatIsIn(version)}</p>
      {version.isNow ? (
        <p className="jobs-open">{t('versions-is-now')}</p>
      ) : (
        <button type="button" className="button button-small" onClick={onUse}>
          {t('versions-use')}
          <span className="unseen"> {when}</span>
        </button>
      )}
    </li>
  )
}

/** The job as it was at earlier saves, to go back to. */
export function VersionsDialog({ onClose }: { readonly onClose: () => void }) {
  const [versions, setVersions] = useState<readonly ListedVersion[] | null>(null)
  useEffect(() => void reporting(async () => setVersions(await listVersions())), [])
  return (
    <DialogFrame title={t('versions-title')} onClose={onClose}>
      <p className="note">{t('versions-note')}</p>
      {versions === null && <p>{t('loading')}</p>}
      {versions?.length === 0 && <p>{t('versions-none')}</p>}
      <ul className="cards">
        {versions?.map((version) => (
          <VersionRow
            key={version.savedAtMs}
            version={version}
            onUse={() => {
              goBackToVersion(version)
              onClose()
            }}
          />
        ))}
      </ul>
    </DialogFrame>
  )
}
