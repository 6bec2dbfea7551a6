import type { Page } from 'playwright-core'
import { button, stage } from './bench'
import type { Device, OpenedApp } from './browser'
import { fingerHand, type Hand, mouseHand } from './hand'

/** Everything that can be on the screen, by name, each reached as a maker reaches it. */
export const STAGES = [/^Photo/, /^Size/, /^Edge/, /^Table/, /^Cuts/, /^Pour/, /^Paper/] as const

export const handOf = (device: Device, page: Page): Hand =>
  device === 'desktop' ? mouseHand(page) : fingerHand(page)

const DIALOGS = [/^Jobs in this browser/, /^Earlier versions/, /^Help and keys/] as const

/** Folded parts hold fields and buttons, too. */
async function unfoldAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const part of document.querySelectorAll('details')) part.open = true
  })
}

async function openMenu(hand: Hand): Promise<void> {
  await hand.press(button(hand, /^Menu/))
  await hand.page.locator('.menu-panel').waitFor()
}

/** Goes through all stages, the menu, all dialogs, and an empty job. */
export async function throughAllLooks(
  { page }: OpenedApp,
  device: Device,
  look: (name: string) => Promise<void>,
): Promise<void> {
  const hand = handOf(device, page)
  await page.locator('.stage[aria-current="step"]').waitFor()
  if (device !== 'desktop') await pullPanelUp(hand)
  for (const name of STAGES) {
    await hand.press(stage(hand, name))
    if (name.source === '^Paper') await page.locator('.sheet-preview svg').first().waitFor()
    if (name.source === '^Pour') await page.getByText('Working it out').waitFor({ state: 'detached' })
    await unfoldAll(page)
    await look(`stage ${name.source.slice(1)}`)
  }
  await openMenu(hand)
  await look('menu')
  await page.keyboard.press('Escape')
  for (const name of DIALOGS) {
    await openMenu(hand)
    await hand.press(page.locator('.menu-panel').getByRole('button', { name }))
    await page.locator('dialog[open] h2').waitFor()
    await page.locator('dialog[open]').getByText('One moment').waitFor({ state: 'detached' })
    await look(`dialog ${name.source.slice(1)}`)
    await page.keyboard.press('Escape')
  }
  await openMenu(hand)
  await hand.press(page.locator('.menu-panel').getByRole('button', { name: DIALOGS[0] }))
  await hand.press(page.getByRole('button', { name: 'Start an empty job' }))
  await page.locator('dialog[open]').waitFor({ state: 'detached' })
  await look('empty job')
}

async function pullPanelUp(hand: Hand): Promise<void> {
  const up = button(hand, 'Pull the panel up')
  if ((await up.count()) > 0) await hand.press(up)
}

export async function makeBright(hand: Hand): Promise<void> {
  await hand.page.locator('.stage[aria-current="step"]').waitFor()
  await openMenu(hand)
  await hand.page.getByRole('checkbox', { name: /^Bright screen/ }).check()
  await hand.page.keyboard.press('Escape')
}
