export { tableTexts as texts } from '../../core/plan'
