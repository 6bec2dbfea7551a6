import { useEffect, useState } from 'react'
import type { CoverKind } from '../../../core/layout'
import { cancelCover } from '../../../state/coverDesk'
import { t } from '../../text/t'
import { useDescribeProblem } from '../../text/useDescribeProblem'
import type { Found } from './useCover'

/** A search that ends sooner needs no progress bar. */
const SHOWN_AFTER_MS = 500

function Running({ found }: { readonly found: Found<CoverKind> }) {
  const [isLong, setLong] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLong(true), SHOWN_AFTER_MS)
    return () => clearTimeout(timer)
  }, [])
  if (!isLong) return null
  return (
    <div className="search-line" role="status">
      <label>
        {t('cover-searching')}
        <progress max={1} value={found.fraction} />
      </label>
      <button type="button" className="button button-small" onClick={() => cancelCover(found.key)}>
        {t('job-cancel')}
      </button>
    </div>
  )
}

/** How far a search is, the way to stop it, and why it has no answer. */
export function SearchLine({ found }: { readonly found: Found<CoverKind> | null }) {
  const describe = useDescribeProblem()
  if (found === null || found.status === 'done') return null
  if (found.status === 'running') return <Running key={found.key} found={found} />
  return (
    <div className="search-line" role="status">
      <span>{found.problem === null ? t('cover-cancelled') : describe(found.problem)}</span>
      <button type="button" className="button button-small" onClick={found.again}>
        {t('cover-again')}
      </button>
    </div>
  )
}
