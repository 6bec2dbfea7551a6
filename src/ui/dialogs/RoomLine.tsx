import { useEffect, useState } from 'react'
import { formatNumber } from '../../core/units'
import { storageRoom, type StorageRoom } from '../../state/storageRoom'
import { t } from '../text/t'

const GIGABYTE = 1e9

const bytesText = (bytes: number): string =>
  bytes < GIGABYTE
    ? t('room-megabytes', { value: formatNumber(bytes / 1e6, { decimals: 0 }) })
    : t('room-gigabytes', { value: formatNumber(bytes / GIGABYTE, { decimals: 1 }) })

/** How much room the jobs take in this browser, and whether it keeps them for good. */
export function RoomLine() {
  const [room, setRoom] = useState<StorageRoom | null>(null)
  useEffect(() => {
    // A browser that does not say leaves the line out.
    storageRoom().then(setRoom, () => undefined)
  }, [])
  if (room === null) return null
  const sizes = { used: bytesText(room.usedBytes), most: bytesText(room.mostBytes) }
  return (
    <p className="note">
      {t('room-used', sizes)} {t(room.isPersistent ? 'room-kept' : 'room-may-go')}
    </p>
  )
}
