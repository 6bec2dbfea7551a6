/** What every field is told beside its value. */
export interface FieldBasics {
  readonly label: string
  /** Reads the label out but does not show it, where a table's headings already say it. */
  readonly labelHidden?: boolean
  readonly hint?: string
  /** What the program found wrong with the value, in a sentence. */
  readonly issue?: string | undefined
  /** Id of a note elsewhere that speaks of this value. */
  readonly noteId?: string | undefined
  readonly disabled?: boolean
}
