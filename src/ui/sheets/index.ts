export { PrintPreview } from './PrintPreview'
