/** Hours are counted from midnight before the first pour, so hour 8 and hour 32 are both eight in the morning. */
export type RoomTemperature =
  | { readonly kind: 'steady'; readonly roomC: number }
  | {
      readonly kind: 'swing'
      readonly meanC: number
      /** Half the difference between the warmest and the coolest of the day. */
      readonly swingC: number
      /** Hour of the day when the room is warmest. */
      readonly warmestHour: number
    }

/** Hour of the day when a room is usually warmest: common practice, no source. */
export const USUAL_WARMEST_HOUR = 15

/** @returns °C at an hour; a day's swing is a cosine about its mean. Rules: RES-6. */
export function roomAtC(room: RoomTemperature, hour: number): number {
  if (room.kind === 'steady') return room.roomC
  return room.meanC + room.swingC * Math.cos((2 * Math.PI * (hour - room.warmestHour)) / 24)
}

/** @returns the day's mean, °C */
export const meanRoomC = (room: RoomTemperature): number => (room.kind === 'steady' ? room.roomC : room.meanC)

/** @returns the warmest of the day, °C */
export const warmestRoomC = (room: RoomTemperature): number =>
  room.kind === 'steady' ? room.roomC : room.meanC + Math.abs(room.swingC)

/** @returns the coolest of the day, °C */
export const coolestRoomC = (room: RoomTemperature): number =>
  room.kind === 'steady' ? room.roomC : room.meanC - Math.abs(room.swingC)
