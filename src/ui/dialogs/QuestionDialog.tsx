import { type Question } from '../uiStore'
import { DialogFrame } from './DialogFrame'
import { t } from '../text/t'
import { useDescribeProblem } from '../text/useDescribeProblem'

interface Props {
  readonly question: Question
  readonly onClose: () => void
}

/** Asks before something that cannot be undone. */
export function QuestionDialog({ question, onClose }: Props) {
  const describe = useDescribeProblem()
  return (
    <DialogFrame title={t('question-title')} onClose={onClose}>
      <p>{describe(question.problem)}</p>
      <div className="button-row">
        <button
          type="button"
          className="button button-main"
          onClick={() => {
            onClose()
            question.onYes()
          }}
        >
          {question.yes}
        </button>
        {(question.more ?? []).map(({ label, onChoose }) => (
          <button
            key={label}
            type="button"
            className="button"
            onClick={() => {
              onClose()
              onChoose()
            }}
          >
            {label}
          </button>
        ))}
        <button type="button" className="button" onClick={onClose}>
          {question.no}
        </button>
      </div>
    </DialogFrame>
  )
}
