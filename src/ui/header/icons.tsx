const box = { fill: 'none', stroke: 'currentColor' } as const;

export const SearchIcon = () => (
  <svg {...box} aria-hidden="true" width="13" height="13" viewBox="0 0 13 13" strokeWidth="1.3">
    <circle cx="5.3" cy="5.3" r="4" />
    <path d="M8.4 8.4 12 12" />
  </svg>
);

export const UndoIcon = () => (
  <svg {...box} aria-hidden="true" width="15" height="12" viewBox="0 0 15 12" strokeWidth="1.4">
    <path d="M4.5 1 1.3 4.2 4.5 7.4M1.5 4.2H9.2A4 3.4 0 0 1 9.2 11H6" />
  </svg>
);

export const RedoIcon = () => (
  <svg {...box} aria-hidden="true" width="15" height="12" viewBox="0 0 15 12" strokeWidth="1.4">
    <path d="M10.5 1 13.7 4.2 10.5 7.4M13.5 4.2H5.8A4 3.4 0 0 0 5.8 11H9" />
  </svg>
);
