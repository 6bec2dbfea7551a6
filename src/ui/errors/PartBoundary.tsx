import { Component, type ReactNode } from 'react'
import { t } from '../text/t'

interface Props {
  /** What the maker calls this part of the screen. */
  readonly part: string
  readonly children: ReactNode
}

interface State {
  readonly error: Error | null
}

/** Keeps a mistake of ours to the part where it happened: the plan and the other parts live on. */
export class PartBoundary extends Component<Props, State> {
  override readonly state: State = { error: null }

  static getDerivedStateFromError(error: unknown): State {
    return { error: error instanceof Error ? error : new Error(String(error)) }
  }

  override render() {
    const { error } = this.state
    if (error === null) return this.props.children
    return (
      <div className="part-failed" role="alert">
        <h2>{t('part-failed', { part: this.props.part })}</h2>
        <p>{t('part-failed-kept')}</p>
        <p className="note">{error.message}</p>
        <button type="button" className="button" onClick={() => this.setState({ error: null })}>
          {t('part-failed-again')}
        </button>
      </div>
    )
  }
}
