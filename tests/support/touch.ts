import type { CDPSession, Page } from 'playwright-core'

export interface PagePoint {
  readonly x: number
  readonly y: number
}

const sessions = new WeakMap<Page, Promise<CDPSession>>()

const sessionOf = (page: Page): Promise<CDPSession> => {
  const known = sessions.get(page) ?? page.context().newCDPSession(page)
  sessions.set(page, known)
  return known
}

type TouchType = 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel'

const send = async (page: Page, type: TouchType, fingers: readonly PagePoint[]): Promise<void> => {
  const session = await sessionOf(page)
  await session.send('Input.dispatchTouchEvent', {
    type,
    touchPoints: fingers.map(({ x, y }, id) => ({ x, y, id })),
  })
}

const between = (from: PagePoint, to: PagePoint, share: number): PagePoint => ({
  x: from.x + (to.x - from.x) * share,
  y: from.y + (to.y - from.y) * share,
})

/** Moves one or more fingers, each on its own straight way, and lifts them. Page points in CSS pixels. */
export const touchGesture = async (
  page: Page,
  fingers: readonly { readonly from: PagePoint; readonly to: PagePoint }[],
  steps = 12,
): Promise<void> => {
  await send(
    page,
    'touchStart',
    fingers.map(({ from }) => from),
  )
  for (let step = 1; step <= steps; step++) {
    await send(
      page,
      'touchMove',
      fingers.map(({ from, to }) => between(from, to, step / steps)),
    )
  }
  await send(page, 'touchEnd', [])
}

/** One finger down, along a line, up. */
export const touchDrag = (page: Page, from: PagePoint, to: PagePoint, steps = 12): Promise<void> =>
  touchGesture(page, [{ from, to }], steps)

/** Two fingers apart (factor above 1) or together, along the horizontal through the middle. */
export const touchPinch = (
  page: Page,
  middle: PagePoint,
  factor: number,
  startSpreadPx = 80,
): Promise<void> => {
  const finger = (side: 1 | -1) => ({
    from: { x: middle.x + (side * startSpreadPx) / 2, y: middle.y },
    to: { x: middle.x + (side * startSpreadPx * factor) / 2, y: middle.y },
  })
  return touchGesture(page, [finger(-1), finger(1)])
}
