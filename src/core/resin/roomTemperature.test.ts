import { describe, expect, it } from 'vitest'
import { coolestRoomC, meanRoomC, roomAtC, warmestRoomC, type RoomTemperature } from './roomTemperature'

const swing: RoomTemperature = { kind: 'swing', meanC: 21, swingC: 4, warmestHour: 15 }

describe('roomTemperature', () => {
  it('RES-6 a steady room is the same at every hour', () => {
    const room: RoomTemperature = { kind: 'steady', roomC: 19 }
    expect([0, 7.5, 100].map((hour) => roomAtC(room, hour))).toEqual([19, 19, 19])
    expect([meanRoomC(room), warmestRoomC(room), coolestRoomC(room)]).toEqual([19, 19, 19])
  })

  it('RES-6 a swinging room is warmest at its hour, coolest twelve hours on, and repeats every day', () => {
    expect(roomAtC(swing, 15)).toBeCloseTo(25, 12)
    expect(roomAtC(swing, 27)).toBeCloseTo(17, 12)
    expect(roomAtC(swing, 21)).toBeCloseTo(21, 12)
    expect(roomAtC(swing, 15 + 24 * 9)).toBeCloseTo(25, 9)
    expect([meanRoomC(swing), warmestRoomC(swing), coolestRoomC(swing)]).toEqual([21, 25, 17])
  })

  it('RES-6 a swing stated the other way round has the same warmest and coolest', () => {
    const turned = { ...swing, swingC: -4 }
    expect([warmestRoomC(turned), coolestRoomC(turned)]).toEqual([25, 17])
  })
})
