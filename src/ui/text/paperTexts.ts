export { paperTexts as texts } from '../../core/plan'
