import '@fontsource/source-sans-3/400.css'
import '@fontsource/source-sans-3/600.css'
import './sheets.css'
import { createPortal } from 'react-dom'
import { type PaperName, paperSize, type Sheet, sheetToSvg } from '../../core/drawing'
import { sheetText } from '../../core/plan'

export interface PrintSheetsProps {
  readonly sheets: readonly Sheet[]
  readonly paper: PaperName
  /** The mix card is still being worked out: printing waits for it. */
  readonly isWaiting: boolean
}

/** Names in a sheet are escaped by sheetToSvg, whose tests hold it to that: its markup may go in as it is. */
const SheetSvg = ({ sheet, className }: { sheet: Sheet; className: string }) => (
  <div className={className} dangerouslySetInnerHTML={{ __html: sheetToSvg(sheet) }} />
)

/** Small on the screen, one below the other, with the button that prints them. */
export function PrintSheets({ sheets, paper, isWaiting }: PrintSheetsProps) {
  return (
    <section className="sheets">
      <div className="sheets-head">
        <button
          type="button"
          className="button button-main"
          disabled={isWaiting}
          onClick={() => void printSheets()}
        >
          {sheetText.sheetPrint}
        </button>
        <span>
          {isWaiting
            ? sheetText.sheetMixWaiting
            : sheetText.sheetPrintPages({ pages: String(sheets.length) })}
        </span>
      </div>
      <ol className="sheet-previews">
        {sheets.map((sheet, k) => (
          <li key={k} aria-label={sheetText.sheetPreviewPage({ page: String(k + 1), title: sheet.title })}>
            <SheetSvg sheet={sheet} className="sheet-preview" />
          </li>
        ))}
      </ol>
      <PrintJob sheets={sheets} paper={paper} />
    </section>
  )
}

interface PrintJobProps extends Omit<PrintSheetsProps, 'isWaiting'> {
  /** It prints instead of any other job on the page. */
  readonly comesFirst?: boolean
}

/**
 * What goes to the printer: pages of the paper's own size, beside the program and shown in print alone. Each page hides
 * what would stand out, because content wider than the page makes the browser shrink the whole job.
 */
export function PrintJob({ sheets, paper, comesFirst = false }: PrintJobProps) {
  const { widthMm, heightMm } = paperSize(paper, sheets[0]?.orientation)
  return createPortal(
    <div className={comesFirst ? 'print-job print-job-first' : 'print-job'} aria-hidden="true">
      <style>{`@page { size: ${widthMm}mm ${heightMm}mm; margin: 0 }`}</style>
      {sheets.map((sheet, k) => (
        <div
          key={k}
          className="print-page"
          // A hair lower than the paper: rounding must not push a blank page out behind it.
          style={{ inlineSize: `${widthMm}mm`, blockSize: `${heightMm - 0.2}mm` }}
        >
          <SheetSvg sheet={sheet} className="print-sheet" />
        </div>
      ))}
    </div>,
    document.body,
  )
}

/** Both weights, whether or not anything on screen is set in them yet. */
export async function loadSheetFont(): Promise<void> {
  await Promise.all(['400', '600'].map((weight) => document.fonts.load(`${weight} 12px "Source Sans 3"`)))
}

/** The font is laid out by its own widths: it has to be there before the browser sets the pages. */
export async function printSheets(): Promise<void> {
  await loadSheetFont()
  window.print()
}
