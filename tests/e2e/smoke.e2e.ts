import { expect } from 'vitest'
import { appTest } from '../support/appTest'
import { saveScreenshot } from '../support/browser'

appTest('the page opens with its name and an empty console', async ({ desktop }) => {
  expect(await desktop.page.title()).toMatch(/Waneline$/)
  await desktop.page.locator('#root > *').first().waitFor()
  await saveScreenshot(desktop.page, 'smoke desktop')
})

appTest('the page opens on a phone and can be zoomed by the reader', async ({ phone }) => {
  await phone.page.locator('#root > *').first().waitFor()
  const viewport = await phone.page.locator('meta[name=viewport]').getAttribute('content')
  expect(viewport).not.toMatch(/user-scalable|maximum-scale/)
  await saveScreenshot(phone.page, 'smoke phone')
})
