import type { ReactNode } from 'react';

function Icon({ children }: { readonly children: ReactNode }) {
  return (
    <svg className="chapter-icon" width="20" height="14" viewBox="0 0 20 14" aria-hidden="true">
      <g fill="none" stroke="currentColor" strokeWidth="1.2">
        {children}
      </g>
    </svg>
  );
}

/** A line that bends and falls. */
export const RouteIcon = () => (
  <Icon>
    <path d="M1 3H6C12 3 9 11 19 11" />
    <path d="M6 1.4V4.6M13.6 8.4V11.6" strokeWidth="0.9" />
  </Icon>
);

/** Two vehicles and the coupling between them. */
export const TrainsIcon = () => (
  <Icon>
    <path d="M1 3.5H8V10H1ZM12 3.5H19V10H12ZM8 7.5H12M0 12.6H20" />
  </Icon>
);

/** A train's way against what holds. */
export const TrialIcon = () => (
  <Icon>
    <path d="M1 11.5H19" strokeWidth="0.9" />
    <path d="M1 8.5C5 8.5 7 8 9.5 3C12 8 14 8.5 19 8.5" />
  </Icon>
);

/** Two lines apart, and where one of them meets what holds. */
export const CompareIcon = () => (
  <Icon>
    <path d="M1 4C7 4 9 11 19 11" />
    <path d="M1 4C9 4 12 6.5 19 6.5" strokeDasharray="2 1.6" />
  </Icon>
);

/** A level on its two feet upon the line. */
export const SurveyIcon = () => (
  <Icon>
    <path d="M1 12.4L19 9.6" strokeWidth="0.9" />
    <path d="M3.4 4.6L16.4 2.6L16.9 6.1L3.9 8.1ZM5.6 7.9L6 11.6M15.4 6.4L15.9 10" />
  </Icon>
);

/** A piece of a ring on a board, and the line it is sawn along. */
export const BuildIcon = () => (
  <Icon>
    <path d="M1 1.5H19V12.5H1Z" strokeWidth="0.9" />
    <path d="M4 10C6 5.4 14 5.4 16 10M6.6 11.2C8 8.8 12 8.8 13.4 11.2M4 10L6.6 11.2M16 10L13.4 11.2" />
  </Icon>
);

/** A view framed, and the way on to the next. */
export const ShowIcon = () => (
  <Icon>
    <path d="M1 2.5H12.5V11.5H1Z" />
    <path d="M1 9.2C4.5 9.2 6 5 12.5 5" strokeWidth="0.9" />
    <path d="M15 7H19M17.2 5.2L19 7L17.2 8.8" />
  </Icon>
);
