export { coverTexts as texts } from '../../core/plan'
