/** Prints one paper alone: a child of the body, by its class, whose style sheet shows it on paper. */
export function printOnly(paper: string): void {
  const { body } = document;
  body.dataset.print = paper;
  window.addEventListener('afterprint', () => delete body.dataset.print, { once: true });
  window.print();
}
