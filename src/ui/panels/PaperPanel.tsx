import { useStore } from 'zustand'
import { sessionStore, setPreferences } from '../../state/sessionStore'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { t } from '../text/t'
import { PlanNoteField } from './PlanNoteField'

/** Paper size, and the note on the sheet. */
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
      <p className="note">{t('paper-check-bar')}</p>
    </>
  )
}
