import type { Selection } from '../../state/sessionStore'

/** Something that happened on the canvas, to be announced in one short sentence (sayText makes it). */
export type Say =
  | { readonly kind: 'selected'; readonly selection: Selection }
  | { readonly kind: 'nothing-selected' }
  | { readonly kind: 'mark-set'; readonly markId: string }
  | { readonly kind: 'mark-moved'; readonly markId: string }
  | { readonly kind: 'removed' }
  | { readonly kind: 'point-set'; readonly number: number }
  | { readonly kind: 'point-moved'; readonly number: number }
  | { readonly kind: 'point-added'; readonly number: number }
  | { readonly kind: 'point-taken-back'; readonly left: number }
  | { readonly kind: 'points-missing'; readonly placed: number }
  | { readonly kind: 'trace-closed'; readonly meaning: 'outline' | 'void'; readonly points: number }
  | { readonly kind: 'trace-dropped' }
  | { readonly kind: 'stroke-started' }
  | { readonly kind: 'stroke-set'; readonly number: number }
  | { readonly kind: 'stroke-taken-back'; readonly left: number }
  | { readonly kind: 'proposal-chosen'; readonly number: number }
  | { readonly kind: 'edge-mended' }
  | { readonly kind: 'edge-would-cross' }
  | { readonly kind: 'edge-missed' }
  | { readonly kind: 'stretch-begun' }
  | { readonly kind: 'stretch-pinned' }
  | { readonly kind: 'stretch-taken-back' }
  | { readonly kind: 'outline-exists' }
  | { readonly kind: 'outside-photo' }
  | { readonly kind: 'corner-set'; readonly number: number }
  | { readonly kind: 'board-unsized' }
  | { readonly kind: 'board-laid' }
  | { readonly kind: 'rule-laid' }
  | { readonly kind: 'line-drawn'; readonly points: number }
  | { readonly kind: 'datum-started' }
  | { readonly kind: 'datum-set' }
  | { readonly kind: 'table-laid' }
  | { readonly kind: 'table-moved' }
  | { readonly kind: 'piece-laid' }
  | { readonly kind: 'piece-moved' }
  | { readonly kind: 'piece-returned' }
  | { readonly kind: 'turned-over' }
