import { lazy, Suspense } from 'react'
import { useStore } from 'zustand'
import { PartBoundary } from '../errors/PartBoundary'
import { t, withTexts } from '../text/t'
import { ask, showDialog, uiStore } from '../uiStore'
import { QuestionDialog } from './QuestionDialog'

const HelpDialog = lazy(async () => {
  const { HelpDialog: loaded } = await withTexts(import('./HelpDialog'), import('../text/helpTexts'))
  return { default: loaded }
})
const JobsDialog = lazy(async () => ({ default: (await import('./JobsDialog')).JobsDialog }))
const VersionsDialog = lazy(async () => ({ default: (await import('./VersionsDialog')).VersionsDialog }))

const close = () => showDialog(null)

/** Whatever dialog is open; their code is fetched when first asked for. */
export function Dialogs() {
  const dialog = useStore(uiStore, (state) => state.dialog)
  const question = useStore(uiStore, (state) => state.question)
  return (
    <PartBoundary part={t('part-dialog')}>
      <Suspense fallback={null}>
        {dialog === 'help' && <HelpDialog onClose={close} />}
        {dialog === 'jobs' && <JobsDialog onClose={close} />}
        {dialog === 'versions' && <VersionsDialog onClose={close} />}
      </Suspense>
      {question !== null && <QuestionDialog question={question} onClose={() => ask(null)} />}
    </PartBoundary>
  )
}
