export { helpTexts as texts } from '../../core/plan'
