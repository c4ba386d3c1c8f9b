/** How far the page to pass on has come. */
export interface PageState {
  /** Whether the greatest loads are worked out for it too. */
  readonly loads: boolean;
  /** Share done while it is being made; null otherwise. */
  readonly progress: number | null;
  /** The page as made last, with the railway it was made of. */
  readonly made: MadePage | null;
  /** Why there is none, in words. */
  readonly problem: string | null;
}

export interface MadePage {
  readonly html: string;
  /** Offered as the file's name. */
  readonly fileName: string;
  /** Of the railway as it was. */
  readonly scene: object;
  /** False: it was stopped before all loads were known. */
  readonly whole: boolean;
}

/** Writes something that was made to a file of the person's choice; false when they chose none. */
export interface OutputPort {
  save(name: string, text: string, kind: OutputKind): Promise<boolean>;
  /** Shows it beside the program. */
  show(text: string, kind: OutputKind): void;
}

export interface OutputKind {
  readonly description: string;
  readonly mimeType: string;
  readonly extension: `.${string}`;
}
