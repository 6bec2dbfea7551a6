import type { CoverFinding, CoverTask, SearchState } from '../core/layout'
import type { FromSearch, ToSearch } from './searchDesks'

export type ToCover = ToSearch<CoverTask>
export type FromCover = FromSearch<SearchState<CoverFinding>>
