import { formTexts, priceTexts } from '../../../core/plan'
import { wordsOf } from '../../text/wordsOf'

/** A text of the stages Form and Price. */
export const bt = wordsOf({ ...formTexts, ...priceTexts })
