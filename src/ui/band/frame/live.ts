import { useLayoutEffect, useRef } from 'react';
import type { FrameShare } from './motion.ts';

/** The moment under the playhead, worked out once and handed to everything that moves with it. */
export interface Moment extends FrameShare {
  /** s */
  readonly time: number;
  /** Track chainage of the train's reference, m; NaN without a run. */
  readonly place: number;
  /** Pixels along the shared axis; NaN without a run. */
  readonly x: number;
}

export type FollowMoment = (moment: Moment) => void;

/** Everything on the band that follows the playhead, called directly on each change: React is not asked to render. */
export class Live {
  readonly #followers = new Set<FollowMoment>();
  #last: Moment | null = null;

  get moment(): Moment | null {
    return this.#last;
  }

  follow(follower: FollowMoment): () => void {
    this.#followers.add(follower);
    return () => this.#followers.delete(follower);
  }

  show(moment: Moment): void {
    this.#last = moment;
    for (const follower of this.#followers) follower(moment);
  }
}

/** Calls the latest `follower` at every moment shown, without subscribing anew on each render. */
export function useLive(live: Live, follower: FollowMoment): void {
  const latest = useRef(follower);
  useLayoutEffect(() => {
    latest.current = follower;
    // What is rendered while nothing moves, anew or otherwise than before, has to show the moment it comes into.
    if (live.moment) follower(live.moment);
  });
  useLayoutEffect(() => live.follow((moment) => latest.current(moment)), [live]);
}
