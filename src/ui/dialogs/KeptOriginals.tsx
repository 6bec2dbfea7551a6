import { keptFile, type KeptOriginal } from '../../state/planFiles'
import { handOut } from '../files/handOut'
import { reporting } from '../files/reporting'
import { t } from '../text/t'

async function handOutKept({ key, name }: KeptOriginal): Promise<void> {
  const file = await reporting(() => keptFile(key))
  if (file !== null) handOut(file, name)
}

/** Originals of what could not be read whole, to be saved as they came. */
export function KeptOriginals({ kept }: { readonly kept: readonly KeptOriginal[] }) {
  if (kept.length === 0) return null
  return (
    <section className="panel-part" aria-label={t('jobs-kept')}>
      <h3>{t('jobs-kept')}</h3>
      <p className="note">{t('jobs-kept-note')}</p>
      <ul className="cards">
        {kept.map((original) => (
          <li key={original.key} className="row-head">
            <span>{original.name}</span>
            <button type="button" className="button button-small" onClick={() => void handOutKept(original)}>
              {t('jobs-to-file')}
              <span className="unseen"> {original.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
