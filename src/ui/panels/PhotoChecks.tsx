import { useEffect, useState } from 'react'
import type { Photo } from '../../core/plan'
import { JobProblem } from '../../workers/workerLink'
import { photoClient } from '../photoClient'
import { t } from '../text/t'

type Sharpness = 'sharp' | 'blurred'

/** Photos that were looked at before: a worker's answer, never saved. */
const known = new Map<string, Sharpness>()

/** Null when its pixels are not at hand. */
async function lookAt(hash: string): Promise<Sharpness | null> {
  try {
    const found = (await photoClient().sharpness(hash)).isBlurred ? 'blurred' : 'sharp'
    known.set(hash, found)
    return found
  } catch (reason) {
    if (reason instanceof JobProblem) return null
    throw reason
  }
}

/** After the photo was taken: is it sharp enough? What the size finds amiss is listed at its own stage. */
export function PhotoChecks({ photo }: { readonly photo: Photo }) {
  const [found, setFound] = useState<{ readonly hash: string; readonly sharpness: Sharpness | null } | null>(
    null,
  )
  const { hash } = photo
  useEffect(() => {
    let isWanted = true
    void lookAt(hash).then((sharpness) => {
      if (isWanted) setFound({ hash, sharpness })
    })
    return () => {
      isWanted = false
    }
  }, [hash])
  const sharpness = found?.hash === hash ? found.sharpness : known.get(hash)
  if (!sharpness) return null
  return (
    <p className={sharpness === 'blurred' ? 'row-problem' : 'note'} data-sharpness={sharpness}>
      {t(`photo-${sharpness}`)}
    </p>
  )
}
