/** One text in the browser's own storage under a name; where there is no storage it is forgotten with the page. */
export function keptText(name: string): { read(): string | null; write(text: string | null): void } {
  const key = `gradewright.${name}`;
  return {
    read() {
      try {
        return localStorage.getItem(key);
      } catch {
        return null;
      }
    },
    write(text) {
      try {
        if (text === null) localStorage.removeItem(key);
        else localStorage.setItem(key, text);
      } catch {
        // Full or forbidden: the choice then holds until the page is closed.
      }
    },
  };
}
