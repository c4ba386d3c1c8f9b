/** A file that the open railway is written to. `handle` is the browser's own way back to it, null where it gives none; only the port looks into it. */
export interface RailwayFile {
  readonly name: string;
  readonly handle: object | null;
}

/** What the session needs of the machine it runs on; the app wires these to the browser. */
export interface FilePort {
  /** Lets the person pick a scene file; null when they did not. */
  pick(): Promise<(RailwayFile & { readonly text: string }) | null>;
  /** Writes a scene file: into `file` where the browser lets it, else where the person says, who is offered `name`. The file written; null when they did not say. */
  save(name: string, text: string, file: RailwayFile | null): Promise<RailwayFile | null>;
}

/** A railway kept on this machine so that no change to it is lost. */
export interface KeptScene {
  /** Stays the same whatever the railway is called. */
  readonly id: string;
  readonly name: string;
  readonly trialId: string;
  /** The scene's file. */
  readonly text: string;
  /** ms since 1970. */
  readonly at: number;
}

/** What became of a railway that was to be kept: `blocked` while another window has another version of the program open. */
export type KeepOutcome = 'kept' | 'full' | 'blocked' | 'forbidden';

/** Railways kept on this machine. What a browser keeps may be lost at any time: the file is the truth. */
export interface KeepPort {
  /** The newest first, each as it was kept last. */
  list(): readonly KeptScene[];
  /** Keeps it as its railway's newest version; earlier ones stay, thinned. */
  keep(scene: KeptScene): Promise<KeepOutcome>;
  /** Earlier and latest states of a railway, the newest first. */
  versions(id: string): Promise<readonly KeptScene[]>;
  forget(id: string): Promise<void>;
  /** The file that a railway was last written to or opened from; null when there is none. */
  file(id: string): Promise<RailwayFile | null>;
  /** Remembers it; null: none any more. */
  setFile(id: string, file: RailwayFile | null): Promise<void>;
  /** The railway that was being worked on last, to go on with; null when it was an example as it came. */
  last(): string | null;
  setLast(id: string | null): void;
  /** Takes a railway for this window alone, and lets go of the one before; false while another window has it. */
  claim(id: string): Promise<boolean>;
}
