import { lazy, Suspense } from 'react'
import type { PaperName } from '../../core/drawing'
import { setPreferences } from '../../state/sessionStore'
import { PartBoundary } from '../errors/PartBoundary'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { t } from '../text/t'
import { SheetChoice } from './paper/SheetChoice'
import { usePaper } from './paper/usePaper'
import { PlanNoteField } from './PlanNoteField'

const PrintPreview = lazy(async () => {
  const { PrintPreview: loaded } = await import('../sheets')
  return { default: loaded }
})

const TakeAwayPart = lazy(async () => {
  const { TakeAwayPart: loaded } = await import('./paper/TakeAwayPart')
  return { default: loaded }
})

const ClientPicture = lazy(async () => {
  const { ClientPicture: loaded } = await import('../picture')
  return { default: loaded }
})

const HandOverPart = lazy(async () => {
  const { HandOverPart: loaded } = await import('./paper/HandOverPart')
  return { default: loaded }
})

const TemplatePart = lazy(async () => {
  const { TemplatePart: loaded } = await import('./paper/TemplatePart')
  return { default: loaded }
})

/** Paper size, what will be printed, and the note on it. */
export function PaperPanel() {
  const paper = usePaper()
  return (
    <>
      <ChoiceGroup<PaperName>
        label={t('paper-size')}
        value={paper}
        onChange={(chosen) => setPreferences({ paper: chosen })}
        options={[
          { value: 'a4', label: t('paper-a4') },
          { value: 'a3', label: t('paper-a3') },
          { value: 'letter', label: t('paper-letter') },
          { value: 'tabloid', label: t('paper-tabloid') },
        ]}
      />
      <SheetChoice />
      <PlanNoteField />
      <PartBoundary part={t('paper-preview')}>
        <Suspense fallback={<p>{t('loading')}</p>}>
          <PrintPreview />
        </Suspense>
      </PartBoundary>
      <p className="note">{t('paper-check-bar')}</p>
      <PartBoundary part={t('take-away')}>
        <Suspense fallback={<p>{t('loading')}</p>}>
          <ClientPicture />
          <TakeAwayPart />
          <TemplatePart />
          <HandOverPart />
        </Suspense>
      </PartBoundary>
    </>
  )
}
