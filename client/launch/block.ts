/** What the server wrote into this page as data: never run as a script, so the page needs no inline code. */
export function readBlock<T>(id: string): T | null {
  const text = document.getElementById(id)?.textContent;
  return text ? (JSON.parse(text) as T) : null;
}
