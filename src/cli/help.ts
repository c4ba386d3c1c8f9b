/** What `gradewright help` prints. */
export const help = `Gradewright: decide, build, prove and mend a model-railway route on grades.

  gradewright trial FILE [--trial ID] [--train ID] [--json]
      Runs the trials of a scene file and says what they found, the gravest first.
      --trial ID   only this trial
      --train ID   only trials of this train; with --trial: that trial with this train
      --json       one JSON document instead (docs/reference/trial.schema.json)

  gradewright section FILE [--track ID] [--every LENGTH] [--json | --csv]
      Long section of a track: chainage, place, height, heading, curvature, grade.
      --track ID   this track; the first when left out
      --every 10mm step between rows, in any unit (10mm, 1/2in, 0.1m); 100 mm when left out
      --json       one JSON document instead (docs/reference/section.schema.json)
      --csv        comma-separated values instead

  gradewright help
  gradewright --version

Exit code: 0 all passes, 1 something fails, 2 input that has to be mended,
70 a fault of the program.
Results go to standard output, progress and errors to standard error.
`;
