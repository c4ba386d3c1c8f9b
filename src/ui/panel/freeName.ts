/** A name after the wish that none of the list has: the wish itself, or with a number behind it. */
export function freeName(taken: readonly { readonly name: string }[], wish: string): string {
  const stem = wish.replace(/ \d+$/, '');
  let name = wish;
  for (let number = 2; taken.some((one) => one.name === name); number++) name = `${stem} ${number}`;
  return name;
}
