import { chromium, type Browser, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest'
import {
  emptyFile,
  OCEAN_LOCATION,
  photoJpeg,
  smallPng,
  smallWebp,
  textNamedJpg,
  truncatedJpeg,
} from '../support/jpegs'
import { reportPath } from '../support/browser'
import { deskServer, type DeskServer } from '../support/deskServer'
import type { Desk } from '../workers/desk'

// The worker, the import and the storage of photos in a real browser, on a page of their own (tests/workers/desk.html).

declare const desk: Desk

let server: DeskServer
let browser: Browser
let page: Page
const served = new Map<string, Uint8Array>()

beforeAll(async () => {
  server = await deskServer()
  browser = await chromium.connect(inject('browserEndpoint'))
  const context = await browser.newContext()
  await context.route('**/made/*', async (route) => {
    const bytes = served.get(route.request().url().split('/').at(-1) ?? '')
    await route.fulfill(bytes === undefined ? { status: 404 } : { body: Buffer.from(bytes) })
  })
  page = await server.open(context)
})

afterAll(async () => {
  await browser?.close()
  await server?.close()
})

/** Lets the page import a photo. @returns the photo or the problem's code, and how long it took */
async function imported(name: string, bytes: Uint8Array, reduce = false) {
  served.set(name, bytes)
  return page.evaluate(
    async ([file, isReduced]) => {
      const blob = await (await fetch(`/made/${file}`)).blob()
      const startMs = performance.now()
      const photo = await desk.importPhoto(blob, file, { reduce: isReduced })
      const tookMs = performance.now() - startMs
      const stored = photo.ok ? await desk.getPhotoBytes(photo.value.hash) : null
      if (photo.ok) await desk.photoClient().close(photo.value.hash)
      return {
        code: photo.ok ? 'ok' : photo.problem.code,
        sizePx: photo.ok ? [photo.value.widthPx, photo.value.heightPx] : null,
        storedBytes: stored?.size ?? 0,
        storedText:
          stored === null ? '' : new TextDecoder('latin1').decode(await stored.arrayBuffer()).slice(0, 4000),
        tookMs,
      }
    },
    [name, reduce] as const,
  )
}

describe('importing photos in Chromium', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8] as const)('brings orientation %i upright', async (orientation) => {
    const bytes = photoJpeg({ photo: 'd4', size: '0.75 MP', orientation, location: OCEAN_LOCATION })
    const photo = await imported(`turned${orientation}.jpg`, bytes)
    expect(photo.code).toBe('ok')
    expect(photo.sizePx).toEqual([1000, 750])
    expect(photo.storedBytes).toBeLessThan(bytes.length)
  })

  it('takes PNG and WebP', async () => {
    expect((await imported('small.png', smallPng())).code).toBe('ok')
    expect((await imported('small.webp', smallWebp())).code).toBe('ok')
  })

  it('refuses what is empty, no image, cut off, or damaged inside', async () => {
    // Whole by its segments, but the tables that its picture is packed with are gone.
    const damaged = photoJpeg({ photo: 'd2', size: '0.75 MP' }).slice()
    for (let at = 2; at < 1000; at++) {
      const isTable = damaged[at] === 0xff && damaged[at + 1] === 0xc4
      if (isTable) damaged.fill(0xff, at + 4, at + 4 + 16)
    }
    const codes = [
      (await imported('empty.jpg', emptyFile())).code,
      (await imported('text.jpg', textNamedJpg())).code,
      (await imported('short.jpg', truncatedJpeg())).code,
      (await imported('damaged.jpg', damaged)).code,
    ]
    expect(codes).toEqual(['photo-empty', 'photo-not-an-image', 'photo-truncated', 'photo-unreadable'])
  })

  it('takes 12 and 48 megapixels whole', { timeout: 120_000 }, async () => {
    for (const [size, sizePx] of [
      ['12 MP', [4000, 3000]],
      ['48 MP', [8000, 6000]],
    ] as const) {
      const photo = await imported(`big-${sizePx[0]}.jpg`, photoJpeg({ photo: 'd2', size }))
      process.stdout.write(`import of ${size}: ${photo.tookMs.toFixed(0)} ms\n`)
      expect(photo.code).toBe('ok')
      expect(photo.sizePx).toEqual(sizePx)
    }
  })

  it('refuses 60 megapixels, and stores a reduced copy when asked to', { timeout: 120_000 }, async () => {
    const bytes = photoJpeg({ photo: 'd2', size: '60 MP', orientation: 6 })
    expect((await imported('huge.jpg', bytes)).code).toBe('photo-too-large')
    const reduced = await imported('huge.jpg', bytes, true)
    process.stdout.write(`reducing 60 MP: ${reduced.tookMs.toFixed(0)} ms, ${reduced.storedBytes} bytes\n`)
    expect(reduced.code).toBe('ok')
    const [widthPx = 0, heightPx = 0] = reduced.sizePx ?? []
    expect(widthPx * heightPx).toBeLessThanOrEqual(24_000_000)
    expect(widthPx * heightPx).toBeGreaterThan(23_500_000)
    // Upright, in the shape of the photo.
    expect(widthPx / heightPx).toBeCloseTo(4 / 3, 3)
  })
})

describe('the view from straight above', () => {
  it(
    'drawn by the worker equals the direct call, in slices of at most 30 ms',
    { timeout: 120_000 },
    async () => {
      const seen = await page.evaluate(async () => {
        const demo = await desk.loadDemo('library-table')
        if (!demo.ok) throw new Error(demo.problem.code)
        const [slab] = demo.value.plan.slabs
        if (slab?.capture.kind !== 'photo' || slab.capture.datum === null) throw new Error('no photo')
        const [photo] = slab.capture.photos
        if (photo === undefined) throw new Error('no photo')
        const scaled = desk.slabScaleFromMarks({
          ...slab,
          observations: photo.observations.map(({ markId, atPx }) => ({ markId, atPx })),
          imageWidthPx: photo.widthPx,
          imageHeightPx: photo.heightPx,
        })
        if (scaled.scale === null) throw new Error('no scale')
        const frame = desk.slabFrame(scaled.scale, slab.capture.datum)
        if (!frame.ok) throw new Error(frame.problem.code)
        const window = { minXMm: -200, minYMm: -600, maxXMm: 2200, maxYMm: 600, mmPerPx: 0.8 }
        const transform = desk.rectifyingTransform(frame.value, window)
        const blob = await desk.getPhotoBytes(photo.hash)
        if (blob === null) throw new Error('no bytes')

        const client = desk.photoClient()
        await client.open(photo.hash, blob)
        const waitsMs: number[] = []
        let isDone = false
        // A loupe that asks all the time: how long it waits is how long a slice may keep the worker deaf.
        const loupe = (async () => {
          while (!isDone) {
            const askedMs = performance.now()
            const part = await client.crop(
              photo.hash,
              { xPx: 500, yPx: 500, widthPx: 60, heightPx: 60 },
              120,
              120,
            )
            waitsMs.push(performance.now() - askedMs)
            part.close()
          }
        })()
        const startMs = performance.now()
        const overtaken = client.rectify(photo.hash, transform).catch((error: unknown) => String(error))
        const progress: number[] = []
        const bitmap = await client.rectify(photo.hash, transform, { onProgress: (at) => progress.push(at) })
        const tookMs = performance.now() - startMs
        isDone = true
        await loupe

        const pixels = (source: CanvasImageSource, widthPx: number, heightPx: number) => {
          const context = new OffscreenCanvas(widthPx, heightPx).getContext('2d', {
            willReadFrequently: true,
          })
          if (context === null) throw new Error('no canvas')
          context.drawImage(source, 0, 0)
          return { data: context.getImageData(0, 0, widthPx, heightPx).data, widthPx, heightPx }
        }
        const whole = await createImageBitmap(blob)
        const source = pixels(whole, whole.width, whole.height)
        const target = {
          data: new Uint8ClampedArray(transform.widthPx * transform.heightPx * 4),
          widthPx: transform.widthPx,
          heightPx: transform.heightPx,
        }
        desk.rectifyInto(source, target, transform, { from: 0, to: target.heightPx })
        const worker = pixels(bitmap, bitmap.width, bitmap.height)
        let sum = 0
        let farOff = 0
        let shown = 0
        for (let at = 0; at < target.data.length; at += 4) {
          if (target.data[at + 3] !== 255 || worker.data[at + 3] !== 255) continue
          shown++
          const difference = Math.abs((target.data[at] ?? 0) - (worker.data[at] ?? 0))
          sum += difference
          if (difference > 8) farOff++
        }
        const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
        canvas.getContext('2d')?.drawImage(bitmap, 0, 0)
        const jpeg = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.8 })
        const bytes = new Uint8Array(await jpeg.arrayBuffer())
        let text = ''
        for (let at = 0; at < bytes.length; at += 8192)
          text += String.fromCharCode(...bytes.subarray(at, at + 8192))
        return {
          sizePx: [bitmap.width, bitmap.height],
          meanDifference: sum / shown,
          farOffShare: farOff / shown,
          shownShare: shown / (target.data.length / 4),
          overtaken: await overtaken,
          progress,
          waits: waitsMs.length,
          longestWaitMs: Math.max(...waitsMs),
          medianWaitMs: waitsMs.toSorted((a, b) => a - b)[Math.floor(waitsMs.length / 2)] ?? 0,
          tookMs,
          jpeg: btoa(text),
        }
      })
      const { writeFileSync } = await import('node:fs')
      writeFileSync(reportPath('screenshots', 'from-above.jpg'), Buffer.from(seen.jpeg, 'base64'))
      process.stdout.write(
        `view from above of ${seen.sizePx.join(' × ')} px: ${seen.tookMs.toFixed(0)} ms; ${seen.waits} crops meanwhile, ` +
          `waited ${seen.medianWaitMs.toFixed(1)} ms (median), ${seen.longestWaitMs.toFixed(1)} ms (longest); ` +
          `mean difference ${seen.meanDifference.toFixed(3)}, far off ${(seen.farOffShare * 100).toFixed(3)} %\n`,
      )
      expect(seen.sizePx).toEqual([3000, 1500])
      expect(seen.shownShare).toBeGreaterThan(0.7)
      expect(seen.meanDifference).toBeLessThan(0.5)
      expect(seen.farOffShare).toBeLessThan(0.005)
      expect(seen.overtaken).toContain('AbortError')
      expect(seen.progress).toEqual(seen.progress.toSorted((a, b) => a - b))
      expect(seen.waits).toBeGreaterThan(3)
    },
  )

  it('is cancelled soon, and the worker goes on with other work', async () => {
    const seen = await page.evaluate(async () => {
      const [slab] = desk.planStore.getState().plan.slabs
      const photo = slab?.capture.kind === 'photo' ? slab.capture.photos[0] : undefined
      if (photo === undefined) throw new Error('no photo')
      const transform = {
        widthPx: 4000,
        heightPx: 4000,
        photoFromTarget: [0.7, 0, 0, 0, 0.5, 0, 0, 0, 1],
        lens: { focalPx: 2000, centrePx: [1500, 1125], k1: 0, k2: 0 },
      } as const
      const abort = new AbortController()
      const job = desk.photoClient().rectify(photo.hash, transform, { signal: abort.signal })
      await new Promise((resolve) => setTimeout(resolve, 50))
      abort.abort()
      const name = await job.then(
        () => 'done',
        (error: unknown) => (error instanceof Error ? error.name : 'odd'),
      )
      const askedMs = performance.now()
      const preview = await desk.photoClient().preview(photo.hash, 500)
      return { name, waitedMs: performance.now() - askedMs, sizePx: [preview.width, preview.height] }
    })
    expect(seen.name).toBe('AbortError')
    expect(seen.sizePx).toEqual([500, 375])
    expect(seen.waitedMs).toBeLessThan(1_000)
  })
})
