import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { PlanVersion, StoredPlan } from './planStorage'

export interface PlanRecord extends StoredPlan {
  readonly photoHashes: readonly string[]
}

export interface VersionRecord extends PlanVersion {
  readonly photoHashes: readonly string[]
}

/** Bytes, not a Blob: some browsers cannot keep Blobs in a private window. */
interface BytesRecord {
  readonly mediaType: string
  readonly bytes: ArrayBuffer
}

export interface WanelineDatabase extends DBSchema {
  plans: { key: string; value: PlanRecord }
  versions: {
    key: [planId: string, savedAtMs: number]
    value: VersionRecord
    /** Tells which photos are shown without reading the plans. */
    indexes: { photos: string }
  }
  photos: { key: string; value: BytesRecord & { readonly hash: string; readonly storedAtMs: number } }
  leases: {
    key: string
    value: { readonly tabId: string; readonly hashes: readonly string[]; readonly atMs: number }
  }
  originals: {
    key: number
    value: BytesRecord & { readonly key?: number; readonly name: string; readonly keptAtMs: number }
  }
}

export type Database = IDBPDatabase<WanelineDatabase>

const NAME = 'waneline'

/** Raised with every change of the stores; `upgrade` then leads on from each older one. */
const VERSION = 2

/** @throws what the browser throws when it keeps nothing for us (private window, storage switched off) */
export const openDatabase = (onLost: () => void): Promise<Database> =>
  openDB<WanelineDatabase>(NAME, VERSION, {
    upgrade(database, oldVersion) {
      if (oldVersion < 1) {
        database.createObjectStore('plans', { keyPath: 'id' })
        database.createObjectStore('photos', { keyPath: 'hash' })
        database.createObjectStore('leases', { keyPath: 'tabId' })
        database.createObjectStore('originals', { keyPath: 'key', autoIncrement: true })
      }
      if (oldVersion < 2) {
        const versions = database.createObjectStore('versions', { keyPath: ['planId', 'savedAtMs'] })
        versions.createIndex('photos', 'photoHashes', { multiEntry: true })
      }
    },
    /** A newer version of the program in another tab wants to change the stores: let it. */
    blocking(_current, _blocked, event) {
      if (event.target instanceof IDBDatabase) event.target.close()
      onLost()
    },
    terminated: onLost,
  })

export const blobOf = ({ bytes, mediaType }: BytesRecord): Blob => new Blob([bytes], { type: mediaType })

export const recordOf = async (blob: Blob): Promise<BytesRecord> => ({
  mediaType: blob.type,
  bytes: await blob.arrayBuffer(),
})

/** The keys of all versions of a plan; later times come later. */
export const versionsOf = (planId: string): IDBKeyRange => IDBKeyRange.bound([planId, 0], [planId, Infinity])
