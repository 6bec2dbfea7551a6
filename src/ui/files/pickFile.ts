interface Kinds {
  /** As the accept attribute of a file input. */
  readonly accept: string
  /** Opens the camera on the back of a phone. */
  readonly camera?: boolean
}

/** Asks the maker for a file. Resolves with null when none was chosen. */
export function pickFile({ accept, camera }: Kinds): Promise<File | null> {
  const input = document.createElement('input')
  input.type = 'file'
  input.accept = accept
  if (camera === true) input.setAttribute('capture', 'environment')
  input.hidden = true
  document.body.append(input)
  return new Promise((resolve) => {
    const finish = () => {
      input.remove()
      resolve(input.files?.[0] ?? null)
    }
    input.addEventListener('change', finish)
    input.addEventListener('cancel', finish)
    input.click()
  })
}
