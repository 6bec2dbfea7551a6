import { fillTexts } from '../../../core/plan'
import { wordsOf } from '../../text/wordsOf'

/** A text of the search for offcuts. */
export const ft = wordsOf(fillTexts)
