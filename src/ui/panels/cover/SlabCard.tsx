import { useState } from 'react'
import { describeIssue, type Option, type SlabRow } from '../../../core/plan'
import { boardFeetFromMm3, formatNumber, mm3ToLitres } from '../../../core/units'
import { layFootprint, removeSlab, setSlabFacts, setSlabStock } from '../../../state/commands'
import { run } from '../../../state/run'
import { sessionStore } from '../../../state/sessionStore'
import { LengthField } from '../../fields/LengthField'
import { PercentOrNone } from './PercentOrNone'
import { TextField } from '../../fields/TextField'
import { MarkIcon, StopIcon } from '../../icons'
import { goToStage } from '../../stages/goToStage'
import { t } from '../../text/t'
import { useDisplay } from '../../text/useDisplay'
import { type Format, useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { MoreInputs } from '../pour/MoreInputs'
import { slabMark, slabVerdictText } from './verdictWords'

function figuresOf(row: SlabRow, format: Format, isInch: boolean) {
  const known = <T,>(name: string, value: T | null, text: (value: T) => string) =>
    value === null ? [] : [{ name, figure: text(value) }]
  const board = (mm3: number) =>
    isInch
      ? t('slabs-board-feet', { feet: formatNumber(boardFeetFromMm3(mm3), { decimals: 1 }) })
      : format.volume(mm3ToLitres(mm3))
  return [
    ...known(
      t('slabs-largest'),
      row.largest,
      ({ lengthMm, widthMm }) =>
        `${format.length(Math.floor(lengthMm))} × ${format.length(Math.floor(widthMm))}`,
    ),
    ...known(t('slabs-resin'), row.resinLitres, format.volume),
    ...known(t('slabs-waste'), row.wasteFraction, format.share),
    ...known(t('slabs-board'), row.volumeMm3, board),
    ...known(t('slabs-weight'), row.massKg, format.mass),
    ...known(t('slabs-finished'), row.finished, ({ thicknessMm }) => format.length(thicknessMm)).map(
      (figure) => ({
        ...figure,
        plusMinus: format.plusMinus(row.finished?.sdMm, 'length'),
      }),
    ),
    ...known(t('slabs-price'), row.slab.priceCents, format.money),
    ...known(t('slabs-material'), row.materialCents, format.money),
    ...known(t('slabs-days'), row.pourHours, daysText),
  ]
}

const daysText = (hours: number): string =>
  hours === 0 ? t('slabs-no-pour') : t('slabs-days-figure', { days: Math.ceil(hours / 24) })

function Drying({ row }: { readonly row: SlabRow }) {
  const { id, moistureFraction, stock } = row.slab
  const set = (changes: Partial<typeof stock>) => run(setSlabStock, { slabId: id, stock: changes })
  return (
    <div className="field-grid">
      <LengthField
        label={t('slabs-flattening')}
        valueMm={stock.flatteningMm}
        limits={{ leastMm: 0, greatestMm: 500 }}
        onChange={(flatteningMm) => set({ flatteningMm })}
      />
      <PercentOrNone
        label={t('slabs-moisture')}
        fraction={moistureFraction}
        greatest={1}
        onChange={(fraction) => run(setSlabFacts, { slabId: id, facts: { moistureFraction: fraction } })}
      />
      <PercentOrNone
        label={t('slabs-pour-moisture')}
        fraction={stock.pourMoistureFraction}
        greatest={1}
        onChange={(pourMoistureFraction) => set({ pourMoistureFraction })}
      />
      <PercentOrNone
        label={t('slabs-shrinkage')}
        fraction={stock.shrinkageFraction}
        greatest={0.2}
        onChange={(shrinkageFraction) => set({ shrinkageFraction })}
      />
    </div>
  )
}

function Reject({ row }: { readonly row: SlabRow }) {
  const { id, stock } = row.slab
  const [isAsking, setAsking] = useState(false)
  const set = (rejected: string | null) => run(setSlabStock, { slabId: id, stock: { rejected } })
  if (stock.rejected !== null) {
    return (
      <button type="button" className="button button-small" onClick={() => set(null)}>
        {t('slabs-take-back')}
      </button>
    )
  }
  if (!isAsking) {
    return (
      <button type="button" className="button button-small" onClick={() => setAsking(true)}>
        {t('slabs-reject')}
      </button>
    )
  }
  return (
    <TextField
      label={t('slabs-reject-why')}
      value=""
      needed
      onChange={(reason) => {
        setAsking(false)
        set(reason)
      }}
    />
  )
}

function Notes({ row }: { readonly row: SlabRow }) {
  const display = useDisplay()
  const { stock, moistureFraction } = row.slab
  return (
    <>
      {stock.rejected !== null && <p>{t('slabs-rejected', { reason: stock.rejected })}</p>}
      {row.issues.map((issue) => (
        <p key={issue.id}>{describeIssue(issue, display)}</p>
      ))}
      {moistureFraction === null && <p className="note">{t('slabs-moisture-unknown')}</p>}
    </>
  )
}

/** One candidate: its answer, its figures, and what can be done with it. */
export function SlabCard({ row, option }: { readonly row: SlabRow; readonly option: Option }) {
  const format = useFormat()
  const display = useDisplay()
  const { slab, pose } = row
  const mark = slabMark(row)
  const look = () => {
    sessionStore.setState({ slabId: slab.id, selection: null })
    goToStage(slab.capture.kind === 'photo' ? 'scale' : 'trace')
  }
  const lay = () => {
    if (pose === null) return
    run(layFootprint, { optionId: option.id, slabId: slab.id, pose })
    sessionStore.setState({ slabId: slab.id, selection: null })
    goToStage('table')
  }
  return (
    <li className="card slab-card" data-slab={slab.id} data-mark={mark}>
      <div className="row-head">
        {mark === 'stop' ? <StopIcon /> : <MarkIcon mark={mark} />}
        <strong>
          {slab.name} {slab.tag !== '' && <span className="note">{slab.tag}</span>}
        </strong>
      </div>
      <p className="cover-sentence">{slabVerdictText(row, format, display)}</p>
      <Notes row={row} />
      <Figures rows={figuresOf(row, format, display.system === 'inch')} />
      <div className="button-row">
        <button type="button" className="button button-small" disabled={pose === null} onClick={lay}>
          {t('slabs-lay')}
        </button>
        <button type="button" className="button button-small" onClick={look}>
          {t('slabs-look')}
        </button>
        <Reject row={row} />
      </div>
      <MoreInputs title={t('slabs-drying')}>
        <Drying row={row} />
        <button
          type="button"
          className="button button-small"
          onClick={() => run(removeSlab, { slabId: slab.id })}
        >
          {t('slabs-remove', { name: slab.name })}
        </button>
      </MoreInputs>
    </li>
  )
}
