import { type RouteActions, supportOfKey } from '../../state/route/index.ts';
import type { HandDeed } from '../../tools/index.ts';

/** Does to the plan what a hand means. */
export function doDeed(actions: RouteActions, deed: HandDeed): void {
  switch (deed.kind) {
    case 'choose':
      actions.chooseHandle(deed.key);
      break;
    case 'take':
      actions.take(deed.key, deed.from);
      break;
    case 'move':
      actions.moveTo(deed.to, deed.snap);
      break;
    case 'raise':
      actions.raise(deed.by, deed.snaps);
      break;
    case 'steer':
      actions.steer(deed.by);
      break;
    case 'choose-support':
      actions.chooseSupport(supportOfKey(deed.key) ?? 0, deed.several);
      break;
    case 'go-on':
      actions.goOn(deed.by, deed.several);
      break;
    case 'let-go':
      actions.letGo();
      break;
    case 'put-back':
      actions.putBack();
  }
}
