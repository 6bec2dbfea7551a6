import { t } from '../text/t'

const STEPS = ['lay', 'marks', 'line', 'tape', 'stand', 'whole', 'flat'] as const

/** What to do before the camera opens, so that lengths can be read off the photo. */
export function PhotoGuide() {
  return (
    <ol className="note photo-guide">
      {STEPS.map((step) => (
        <li key={step}>{t(`guide-${step}`)}</li>
      ))}
    </ol>
  )
}
