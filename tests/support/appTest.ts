import { test } from 'vitest'
import { type Device, openApp, type OpenedApp, saveScreenshot } from './browser'

const opened =
  (device: Device) =>
  async (
    { task }: { readonly task: { readonly name: string; readonly result?: { readonly state: string } } },
    use: (app: OpenedApp) => Promise<void>,
  ): Promise<void> => {
    const app = await openApp({ device })
    await use(app)
    if (task.result?.state === 'fail') await saveScreenshot(app.page, `failed ${task.name} ${device}`)
    await app.close()
  }

/**
 * A test that is handed the opened program: `appTest('...', async ({ desktop }) => { await desktop.page... })`.
 * Afterwards the page is closed, and the test fails when the console said anything.
 */
export const appTest = test.extend<{ readonly desktop: OpenedApp; readonly phone: OpenedApp }>({
  desktop: opened('desktop'),
  phone: opened('phone'),
})
