export { PrintPages, PrintPreview } from './PrintPreview'
export { loadSheetFont } from './PrintSheets'
