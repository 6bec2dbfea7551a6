import exifr from 'exifr'
import { unzipSync } from 'fflate'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { freshBrowser, openTab } from '../../tests/support/browserTab'
import { OCEAN_LOCATION, photoJpeg } from '../../tests/support/jpegs'
import { addPhotoSlab } from './commands'

beforeEach(freshBrowser)
afterEach(() => {
  vi.unstubAllGlobals()
})

it('a saved file does not say where its photos were taken, whatever the photo said', async () => {
  const taken = photoJpeg({ photo: 'd2', size: '0.75 MP', orientation: 6, location: OCEAN_LOCATION })
  // A reader that is not ours finds the place in the photo as it was taken.
  expect((await exifr.gps(taken))?.latitude).toBeCloseTo(OCEAN_LOCATION.latitudeDeg, 3)
  const tab = await openTab()
  const opened = await tab.openFile(new File([new Uint8Array(taken)], 'taken.jpg'))
  if (!opened.ok || opened.value.kind !== 'photo') throw new Error('the photo did not open')
  tab.run(addPhotoSlab, { slabId: 'slab', photo: opened.value.photo })
  const saved = await tab.savePlanFile(tab.planStore.getState().plan)
  expect(saved.missingPhotos).toBe(0)
  const entries = unzipSync(new Uint8Array(await saved.blob.arrayBuffer()))
  const [photo] = Object.entries(entries).flatMap(([name, bytes]) =>
    name.startsWith('photos/') ? [bytes] : [],
  )
  if (photo === undefined) throw new Error('no photo in the file')
  expect(await exifr.gps(photo)).toBeUndefined()
  expect(Buffer.from(photo).includes('GPS')).toBe(false)
  // Which way up it was held stays.
  expect(await exifr.orientation(photo)).toBe(6)
})
