import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { planStore } from '../state/planStore'
import { sessionStore } from '../state/sessionStore'
import { useShortcuts } from './actions/useShortcuts'
import { LiveRegion, SlabCanvas } from './canvas'
import { Dialogs } from './dialogs/Dialogs'
import { PartBoundary } from './errors/PartBoundary'
import { DropPlace } from './files/DropPlace'
import { Header } from './header/Header'
import { LostParts } from './LostParts'
import { NewerVersion } from './NewerVersion'
import { Notice } from './Notice'
import { BuildAsking } from './panels/build/BuildAsking'
import { PourAsking } from './panels/pour/PourAsking'
import { Sheet, type SheetHeight } from './panels/Sheet'
import { PrintFromAnywhere } from './PrintFromAnywhere'
import { RunningJobs } from './RunningJobs'
import { StageBar } from './stages/StageBar'
import { t } from './text/t'
import { uiStore } from './uiStore'
import { CanvasToolbar } from './toolbar/CanvasToolbar'

/** Bright mode is a matter of the whole page: the style sheets look at its root. */
function useBrightPage(): void {
  const bright = useStore(sessionStore, (session) => session.bright)
  useEffect(() => {
    document.documentElement.toggleAttribute('data-bright', bright)
  }, [bright])
}

/** Windows and history are told apart by the job's name. */
function usePageTitle(isReady: boolean): void {
  const name = useStore(planStore, ({ plan }) => plan.name)
  useEffect(() => {
    if (isReady) document.title = t('page-title', { name })
  }, [isReady, name])
}

/** Who takes up a tool wants to see the picture: a panel pulled all the way up on a phone goes half down. */
function useRoomForTool(height: SheetHeight, onHeight: (height: SheetHeight) => void): void {
  const tool = useStore(sessionStore, (session) => session.tool)
  const seen = useRef(tool)
  useEffect(() => {
    if (seen.current === tool) return
    seen.current = tool
    if (tool !== 'select' && height === 'high') onHeight('half')
  }, [tool, height, onHeight])
}

/** The workbench: stages above, canvas in the middle, one panel of inputs and results beside it. */
export function App() {
  const [height, setHeight] = useState<SheetHeight>('half')
  const isReady = useStore(uiStore, (state) => state.isReady)
  useBrightPage()
  usePageTitle(isReady)
  useRoomForTool(height, setHeight)
  useShortcuts()
  if (!isReady) return <p className="opening">{t('opening')}</p>
  return (
    <div className="workbench" data-sheet={height}>
      <Header />
      <StageBar />
      <main className="canvas-place">
        <PartBoundary part={t('canvas-part')}>
          <SlabCanvas />
          <CanvasToolbar />
        </PartBoundary>
        <Notice />
        <NewerVersion />
        <LostParts />
        <RunningJobs />
      </main>
      <PartBoundary part={t('panel-label')}>
        <Sheet height={height} onHeight={setHeight} />
      </PartBoundary>
      <LiveRegion />
      <PrintFromAnywhere />
      <PourAsking />
      <BuildAsking />
      <DropPlace />
      <Dialogs />
    </div>
  )
}
