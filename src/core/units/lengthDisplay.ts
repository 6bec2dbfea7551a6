/** How lengths are shown and, when no unit is typed, read. The fraction is the finest graduation of an inch shown. */
export type LengthDisplay =
  { readonly system: 'mm' } | { readonly system: 'inch'; readonly fraction: 8 | 16 | 32 }
