import { lazy, Suspense } from 'react'
import { useStore } from 'zustand'
import { sessionStore, setPreferences } from '../../state/sessionStore'
import { PartBoundary } from '../errors/PartBoundary'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { t } from '../text/t'
import { PlanNoteField } from './PlanNoteField'

const PrintPreview = lazy(async () => {
  const { PrintPreview: loaded } = await import('../sheets')
  return { default: loaded }
})

/** Paper size, what will be printed, and the note on it. */
export function PaperPanel() {
  const paper = useStore(sessionStore, (session) => session.paper)
  return (
    <>
      <ChoiceGroup<'a4' | 'letter'>
        label={t('paper-size')}
        value={paper}
        onChange={(chosen) => setPreferences({ paper: chosen })}
        options={[
          { value: 'a4', label: t('paper-a4') },
          { value: 'letter', label: t('paper-letter') },
        ]}
      />
      <PlanNoteField />
      <PartBoundary part={t('paper-preview')}>
        <Suspense fallback={<p>{t('loading')}</p>}>
          <PrintPreview />
        </Suspense>
      </PartBoundary>
      <p className="note">{t('paper-check-bar')}</p>
    </>
  )
}
