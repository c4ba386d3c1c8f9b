/** The project's own mark: a line that steps down over three trestles onto the ground. */
export function Mark() {
  return (
    <svg className="mark-glyph" width="24" height="18" viewBox="0 0 24 18" aria-hidden="true">
      <g fill="none" stroke="currentColor">
        <path d="M1 3.2H5.5C12 3.2 12 14.6 18.5 14.6H23" strokeWidth="1.6" strokeLinecap="round" />
        <path d="M4 3.4V16.6M9.1 6.3V16.6M14.6 12.2V16.6" strokeWidth="0.9" />
        <path d="M2.2 16.6H21" strokeWidth="0.7" />
      </g>
    </svg>
  );
}
