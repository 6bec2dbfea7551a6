// Paints the icons that phones and desktops ask for from public/icon.svg. Run by hand when the drawing changes:
// node .scripts/icons.mjs
import { readFileSync } from 'node:fs'
import { chromium } from 'playwright-core'
import { ensureBrowser } from './browser.mjs'
import { inRoot } from './root.mjs'

const PAPER = '#f7f4ec'
const drawing = readFileSync(inRoot('public', 'icon.svg'), 'utf8')

/** A system that cuts icons to its own shape keeps the middle four fifths. */
const icons = [
  { file: 'icon-192.png', sizePx: 192, share: 1, background: 'transparent' },
  { file: 'icon-512.png', sizePx: 512, share: 1, background: 'transparent' },
  { file: 'icon-maskable-512.png', sizePx: 512, share: 0.8, background: PAPER },
  { file: 'icon-touch-180.png', sizePx: 180, share: 0.9, background: PAPER },
]

const browser = await chromium.launch({
  executablePath: ensureBrowser(),
  args: ['--no-sandbox', '--disable-gpu'],
})
for (const { file, sizePx, share, background } of icons) {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } })
  const side = sizePx * share
  await page.setContent(
    `<style>body { margin: 0; display: grid; place-items: center; height: ${sizePx}px; background: ${background} }
     svg { display: block; width: ${side}px; height: ${side}px }</style>${drawing}`,
  )
  await page.screenshot({ path: inRoot('public', file), omitBackground: true })
  await page.close()
}
await browser.close()
