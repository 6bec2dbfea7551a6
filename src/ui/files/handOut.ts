/** Hands a file to the browser to keep. */
export function handOut(file: Blob, name: string): void {
  const address = URL.createObjectURL(file)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // The browser reads the address after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
