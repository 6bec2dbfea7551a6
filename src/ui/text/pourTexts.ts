export { pourTexts as texts } from '../../core/plan'
