import { Component, type ReactNode } from 'react';

interface FenceProps {
  /** What is inside, in words: "The stage". */
  readonly what: string;
  readonly children: ReactNode;
}

interface FenceState {
  readonly said: string | null;
}

/** Keeps a failure of one part of the screen inside that part, and offers to start the part again. */
export class Fence extends Component<FenceProps, FenceState> {
  override state: FenceState = { said: null };

  static getDerivedStateFromError(error: unknown): FenceState {
    return { said: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { said } = this.state;
    if (said === null) return this.props.children;
    return (
      <div className="fenced" role="alert">
        <h2>{this.props.what} has stopped</h2>
        <p>{said}</p>
        <p>Everything else goes on, and nothing you changed is lost.</p>
        <button type="button" className="plain-button" onClick={() => this.setState({ said: null })}>
          Start it again
        </button>
      </div>
    );
  }
}
