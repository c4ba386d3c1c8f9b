/** What the session needs of the machine it runs on; the app wires these to the browser. */
export interface FilePort {
  /** Lets the person pick a scene file; null when they did not. */
  pick(): Promise<{ readonly name: string; readonly text: string } | null>;
  /** Writes a scene file where the person says; its name, or null when they did not. */
  save(name: string, text: string): Promise<string | null>;
}

/** A scene kept on this machine so that no change to it is lost. */
export interface KeptScene {
  readonly name: string;
  readonly trialId: string;
  /** The scene's file. */
  readonly text: string;
  /** ms since 1970. */
  readonly at: number;
}

/** Scenes kept on this machine, one a name. What a browser keeps may be lost at any time: the file is the truth. */
export interface KeepPort {
  /** The newest first. */
  list(): readonly KeptScene[];
  /** False when the machine would not keep it. */
  keep(scene: KeptScene): boolean;
  forget(name: string): void;
  /** The name of the scene that was being worked on last, to go on with; null when it was an example as it came. */
  last(): string | null;
  setLast(name: string | null): void;
}
