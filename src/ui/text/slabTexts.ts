export { slabTexts as texts } from '../../core/plan'
