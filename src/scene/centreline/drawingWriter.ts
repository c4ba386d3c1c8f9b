import { drawingLimits } from './limits.ts';
import { CentrelineError, type Drawing, type DrawnLine } from './types.ts';

/** Collects what a file says, within the limits. */
export class DrawingWriter {
  private readonly lines: DrawnLine[] = [];
  private readonly problems: { line: number; found: string }[] = [];
  private readonly assumed = new Set<string>();
  private points = 0;

  /** Adds a line of two points or more. Throws CentrelineError when there are too many points. */
  add(line: DrawnLine): void {
    this.points += line.length;
    if (this.points > drawingLimits.points) {
      throw new CentrelineError(`More than ${drawingLimits.points} points: thin the file out.`);
    }
    if (line.length > 1) this.lines.push(line);
  }

  wrong(line: number, found: string): void {
    if (this.problems.length < drawingLimits.problems) this.problems.push({ line, found });
  }

  assume(sentence: string): void {
    this.assumed.add(sentence);
  }

  drawing(): Drawing {
    return { lines: this.lines, problems: this.problems, assumed: [...this.assumed] };
  }
}
