/** Names that the program gives until the maker finds better ones. */
export const defaultNames = {
  plan: 'New table',
  slab: (number: number) => `Slab ${number}`,
  option: (number: number) => `Option ${number}`,
  copyOf: (name: string) => `${name} (copy)`,
  boardCorner: (board: string, number: number) => `${board} ${number}`,
  ruleEnd: (rule: string, number: number) => `${rule}, end ${number}`,
  unnamed: 'Unnamed',
} as const
