import { useState } from 'react'
import { type DrawingFrame, GREATEST_LENGTH_MM, type TemplateSheet, templateSheets } from '../../../core/plan'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { OptionalLengthField } from '../../fields/LengthField'
import { PrintJob, printSheets } from '../../sheets/PrintSheets'
import { t } from '../../text/t'
import { PanelPart } from '../PanelPart'
import { paperWork } from './paperWork'
import { usePaper } from './usePaper'

const LIMITS = { leastMm: -GREATEST_LENGTH_MM, greatestMm: GREATEST_LENGTH_MM }

/** The outline in true size, on pages to be taped together. While it is laid out, it is what prints. */
export function TemplatePart() {
  const paper = usePaper()
  const [frame, setFrame] = useState<DrawingFrame>('slab')
  const [fromMm, setFrom] = useState<number | null>(null)
  const [toMm, setTo] = useState<number | null>(null)
  const [tiles, setTiles] = useState<readonly TemplateSheet[] | null>(null)
  const layOut = () => {
    const work = paperWork()
    const stretchMm =
      fromMm === null && toMm === null
        ? null
        : ([fromMm ?? -GREATEST_LENGTH_MM, toMm ?? GREATEST_LENGTH_MM] as const)
    setTiles(work === null ? [] : templateSheets(work.input, { frame, stretchMm, paper }))
  }
  const sheets = tiles?.map(({ sheet }) => sheet) ?? []
  return (
    <PanelPart title={t('template')} note={t('template-note')}>
      <ChoiceGroup<DrawingFrame>
        label={t('template-frame')}
        value={frame}
        onChange={setFrame}
        options={[
          { value: 'slab', label: t('template-frame-slab') },
          { value: 'table', label: t('template-frame-table') },
        ]}
      />
      <OptionalLengthField label={t('template-from')} valueMm={fromMm} limits={LIMITS} onChange={setFrom} />
      <OptionalLengthField label={t('template-to')} valueMm={toMm} limits={LIMITS} onChange={setTo} />
      <div className="button-row">
        <button type="button" className="button" onClick={layOut}>
          {t('template-lay-out')}
        </button>
        {sheets.length > 0 && (
          <>
            <button type="button" className="button button-main" onClick={() => void printSheets()}>
              {t('template-print')}
            </button>
            <button type="button" className="button" onClick={() => setTiles(null)}>
              {t('template-put-away')}
            </button>
          </>
        )}
      </div>
      {tiles !== null && (
        <p role="status">
          {sheets.length === 0 ? t('template-none') : t('template-pages', { pages: String(sheets.length) })}
        </p>
      )}
      {sheets[0] !== undefined && <PrintJob sheets={sheets} paper={sheets[0].paper} comesFirst />}
    </PanelPart>
  )
}
