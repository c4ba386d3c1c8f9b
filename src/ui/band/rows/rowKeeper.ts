import { type RowChoice, readRowChoice, writeRowChoice } from './rowChoice.ts';

/** Where a choice of rows is kept between visits. */
export interface RowKeeper {
  read(): RowChoice | null;
  keep(choice: RowChoice | null): void;
}

/** Keeps a choice of rows as a text, wherever `port` puts it. */
export function makeRowKeeper(port: { read(): string | null; write(text: string | null): void }): RowKeeper {
  return {
    read: () => readRowChoice(port.read()),
    keep: (choice) => port.write(choice && writeRowChoice(choice)),
  };
}
