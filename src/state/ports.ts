/** What the session needs of the machine it runs on; the app wires these to the browser. */
export interface FilePort {
  /** Lets the person pick a scene file; null when they did not. */
  pick(): Promise<{ readonly name: string; readonly text: string } | null>;
  /** Writes a scene file where the person says; its name, or null when they did not. */
  save(name: string, text: string): Promise<string | null>;
}
