import type { CoverFinding, CoverTask, SearchState } from '../core/layout'
import type { InputProblem } from '../core/units'

/** From the page to the cover worker. There is no cancel: a search is ended with its worker. */
export interface ToCover {
  readonly jobId: number
  readonly task: CoverTask
}

/** From the cover worker to the page: any number of `incumbent`, then one of the others. */
export type FromCover =
  | {
      readonly kind: 'incumbent'
      readonly jobId: number
      readonly state: SearchState<CoverFinding>
      readonly fraction: number
    }
  | { readonly kind: 'done'; readonly jobId: number; readonly state: SearchState<CoverFinding> }
  | { readonly kind: 'failed'; readonly jobId: number; readonly problem: InputProblem }
