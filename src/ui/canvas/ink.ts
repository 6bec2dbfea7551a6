/** What the canvas draws with: the page's own colours, so that bright mode and print of the page need no second list. */
export interface Ink {
  readonly ink: string
  readonly inkSoft: string
  readonly paper: string
  readonly ground: string
  readonly accent: string
  readonly font: string
  readonly fontPx: number
  /** Multiplies line widths: bright mode draws thicker. */
  readonly weight: number
}

/** Reads the page's colours. */
export function inkOf(host: Element, bright: boolean): Ink {
  const style = getComputedStyle(host)
  const value = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise
  return {
    ink: value('--ink', '#211d18'),
    inkSoft: value('--ink-soft', '#544b40'),
    paper: value('--sheet', '#fdfbf6'),
    ground: value('--ground', '#e9e2d3'),
    accent: value('--accent', '#1c4c78'),
    font: value('--sans', 'sans-serif'),
    fontPx: bright ? 15 : 13,
    weight: bright ? 1.5 : 1,
  }
}
