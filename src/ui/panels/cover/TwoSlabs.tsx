import { useMemo, useState } from 'react'
import type { TwoSlabPair } from '../../../core/layout'
import { type CoverSubject, describeIssue, type Option, type SlabRow, twoSlabsTask } from '../../../core/plan'
import { setCoverWishes } from '../../../state/commands'
import { run } from '../../../state/run'
import { LengthField } from '../../fields/LengthField'
import { readyValue } from '../../readyValue'
import { t } from '../../text/t'
import { useDisplay } from '../../text/useDisplay'
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
  const display = useDisplay()
  const rowOf = (id: string) => rows.find(({ slab }) => slab.id === id)
  const nameOf = (id: string): string => rowOf(id)?.slab.name ?? ''
  if (pair === null) return <p role="status">{t('slabs-two-none')}</p>
  const warnings = [pair.first, pair.second].flatMap(({ id }) =>
    (rowOf(id)?.issues ?? []).map((issue) => `${nameOf(id)}: ${describeIssue(issue, display)}`),
  )
  return (
    <div role="status">
      <p className="cover-sentence">
        {t(pair.join === 'rip' ? 'slabs-two-rip' : 'slabs-two-band', {
          first: nameOf(pair.first.id),
          second: nameOf(pair.second.id),
          firstWidth: format.length(pair.first.widthMm),
          secondWidth: format.length(pair.second.widthMm),
          band: format.length(pair.bandMm),
          spare: format.length(pair.spareMm),
        })}
      </p>
      {warnings.map((warning) => (
        <p key={warning}>{warning}</p>
      ))}
    </div>
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
      rows.flatMap(({ slab, verdict }) => {
        const shape = readyValue(result.slabs.get(slab.id)?.shape)
        // Joined or not, a slab that is too thin makes no table.
        const isOut = slab.stock.rejected !== null || verdict.kind === 'too-thin'
        return shape === null || isOut ? [] : [{ option, slab, shape }]
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
