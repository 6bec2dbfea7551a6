import { useMemo, useState } from 'react'
import type { TwoSlabPair } from '../../../core/layout'
import { type CoverSubject, type Option, type SlabRow, twoSlabsTask } from '../../../core/plan'
import { setCoverWishes } from '../../../state/commands'
import { run } from '../../../state/run'
import { LengthField } from '../../fields/LengthField'
import { readyValue } from '../../readyValue'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { usePlanResult } from '../../usePlanResult'
import { PanelPart } from '../PanelPart'
import { SearchLine } from './SearchLine'
import { useCover } from './useCover'

interface Props {
  readonly option: Option
  readonly rows: readonly SlabRow[]
}

function Answer({ pair, rows }: { readonly pair: TwoSlabPair | null; readonly rows: readonly SlabRow[] }) {
  const format = useFormat()
  const nameOf = (id: string): string => rows.find(({ slab }) => slab.id === id)?.slab.name ?? ''
  if (pair === null) return <p role="status">{t('slabs-two-none')}</p>
  return (
    <p className="cover-sentence" role="status">
      {t(pair.join === 'rip' ? 'slabs-two-rip' : 'slabs-two-band', {
        first: nameOf(pair.first.id),
        second: nameOf(pair.second.id),
        firstWidth: format.length(pair.first.widthMm),
        secondWidth: format.length(pair.second.widthMm),
        band: format.length(pair.bandMm),
        spare: format.length(pair.spareMm),
      })}
    </p>
  )
}

/** The best pair of slabs, when none alone covers. A proposal: nothing is laid. */
export function TwoSlabs({ option, rows }: Props) {
  const result = usePlanResult()
  const [subjects, setSubjects] = useState<readonly CoverSubject[] | null>(null)
  const task = useMemo(() => (subjects === null ? null : twoSlabsTask(option, subjects)), [option, subjects])
  const found = useCover<'twoSlabs'>(task)
  const ask = () =>
    setSubjects(
      rows.flatMap(({ slab }) => {
        const shape = readyValue(result.slabs.get(slab.id)?.shape)
        return shape === null || slab.stock.rejected !== null ? [] : [{ option, slab, shape }]
      }),
    )
  const [pair] = found?.state?.incumbent ?? []
  return (
    <PanelPart title={t('slabs-two')} note={t('slabs-two-note')}>
      <LengthField
        label={t('slabs-two-band-most')}
        valueMm={option.cover.mostBandMm}
        limits={{ leastMm: 0, greatestMm: 500 }}
        onChange={(mostBandMm) => run(setCoverWishes, { optionId: option.id, cover: { mostBandMm } })}
      />
      {task === null && (
        <div className="button-row">
          <button type="button" className="button" onClick={ask}>
            {t('slabs-two-find')}
          </button>
        </div>
      )}
      <SearchLine found={found} />
      {found?.status === 'done' && <Answer pair={pair ?? null} rows={rows} />}
    </PanelPart>
  )
}
