import { describe, expect, it } from 'vitest'
import type { Point } from '../../../core/geometry'
import { LOUPE_RADIUS_PX, loupeCentre } from './loupePlace'

const phone = { width: 390, height: 420 }

describe('loupeCentre', () => {
  it('stands above the finger where there is room', () => {
    const [x, y] = loupeCentre([200, 350], [200, 302], true, phone)
    expect(x).toBe(200)
    expect(y).toBe(302 - LOUPE_RADIUS_PX - 40)
  })

  it('covers neither the finger nor the point, wherever they are on a phone', () => {
    for (let x = 0; x <= phone.width; x += 13) {
      for (let y = 0; y <= phone.height; y += 13) {
        const finger: Point = [x, y]
        const aim: Point = [x, y - 48]
        const [cx, cy] = loupeCentre(finger, aim, true, phone)
        expect(Math.hypot(cx - x, cy - y), `finger at ${x}, ${y}`).toBeGreaterThan(LOUPE_RADIUS_PX)
        expect(Math.hypot(cx - aim[0], cy - aim[1]), `aim over ${x}, ${y}`).toBeGreaterThan(LOUPE_RADIUS_PX)
        expect(cx).toBeGreaterThanOrEqual(LOUPE_RADIUS_PX)
        expect(cy).toBeGreaterThanOrEqual(LOUPE_RADIUS_PX)
        expect(cx).toBeLessThanOrEqual(phone.width - LOUPE_RADIUS_PX)
        expect(cy).toBeLessThanOrEqual(phone.height - LOUPE_RADIUS_PX)
      }
    }
  })

  it('goes to the far corner when the canvas is small', () => {
    expect(loupeCentre([10, 10], [10, 10], false, { width: 150, height: 150 })).toEqual([78, 78])
  })
})
