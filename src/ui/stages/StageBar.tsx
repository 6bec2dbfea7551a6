import { useEffect, useRef } from 'react'
import { useStore } from 'zustand'
import { sessionStore } from '../../state/sessionStore'
import { MarkIcon } from '../icons'
import { t } from '../text/t'
import { DemoLine } from './DemoLine'
import { goToStage } from './goToStage'
import { STAGE_NAMES } from './stageNames'
import { useStageMarks } from './useStageMarks'

/** The row of stages in the order of the work, each with its mark in shape and word. */
export function StageBar() {
  const marks = useStageMarks()
  const current = useStore(sessionStore, (session) => session.stage)
  const row = useRef<HTMLOListElement>(null)
  // A phone has room for half of the row: the stage that is open stays in sight.
  useEffect(() => {
    const open = row.current?.querySelector('[aria-current]')
    open?.scrollIntoView?.({ inline: 'center', block: 'nearest' })
  }, [current])
  return (
    <div className="stage-bar">
      <nav aria-label={t('stages-label')}>
        <ol className="stages" ref={row}>
          {STAGE_NAMES.map((stage) => (
            <li key={stage}>
              <button
                type="button"
                className="stage"
                data-mark={marks[stage]}
                aria-current={stage === current ? 'step' : undefined}
                onClick={() => goToStage(stage)}
              >
                <MarkIcon mark={marks[stage]} />
                <span className="stage-name">
                  <span className="for-wide">{t(`stage-${stage}`)}</span>
                  <span className="for-phone">{t(`stage-short-${stage}`)}</span>
                </span>
                <span className="stage-mark">{t(`mark-${marks[stage]}`)}</span>
              </button>
            </li>
          ))}
        </ol>
      </nav>
      <DemoLine />
    </div>
  )
}
