import { printableText } from './textMetrics'

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** Names come from people and from files: no sign of theirs may be read as markup. */
export const svgText = (text: string): string =>
  printableText(text).replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign)
