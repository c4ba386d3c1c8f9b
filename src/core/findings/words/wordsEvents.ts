import type { RunEvent, RunEventKind } from '../../dynamics/types.ts';
import { jointNumber, vehicleName } from './naming.ts';
import { type Naming, plainShow, type Show, showForce, showOf, showPlace } from './show.ts';

const titles: Readonly<Record<RunEventKind, string>> = {
  stall: 'stalls',
  slip: 'slips',
  grip: 'grips',
  standstill: 'stands',
  moving: 'moves off',
  'run-in': 'run-in',
  'run-out': 'run-out',
  parting: 'parts',
  recoupling: 'couples again',
  arrived: 'arrives',
  'end-of-track': 'end of track',
  'time-limit': 'time is up',
};

/** An event in one or two words, for a mark on an axis. */
export const eventTitle = (kind: RunEventKind): string => titles[kind];

/** An event in a short sentence with its place; `naming.path` turns the path chainage into the scene's. */
export function describeEvent(event: RunEvent, naming: Naming, units: Show = plainShow): string {
  const show = showOf(naming, units);
  const { path } = naming;
  const chainage = path?.reversed ? path.length - event.chainage : event.chainage;
  const at = `at ${showPlace(chainage, show)}`;
  const vehicle = vehicleName(naming, event.subject);
  const joint = `joint ${jointNumber(naming, event.subject)}`;
  const force = showForce(Math.abs(event.value));
  switch (event.kind) {
    case 'stall':
      return `The train stalls ${at}.`;
    case 'slip':
      return `The wheels of ${vehicle} start to spin ${at}.`;
    case 'grip':
      return `The wheels of ${vehicle} grip again ${at}.`;
    case 'standstill':
      return `The train comes to rest ${at}.`;
    case 'moving':
      return `The train moves off ${at}.`;
    case 'run-in':
      return `Slack runs in at ${joint} with ${force}, ${showPlace(chainage, show)}.`;
    case 'run-out':
      return `Slack runs out at ${joint} with ${force}, ${showPlace(chainage, show)}.`;
    case 'parting':
      return `The train parts at ${joint}, pulled with ${force}, ${showPlace(chainage, show)}.`;
    case 'recoupling':
      return `The train couples again at ${joint}, ${showPlace(chainage, show)}.`;
    case 'arrived':
      return `The train arrives ${at}.`;
    case 'end-of-track':
      return `The train runs off the end of the track ${at}.`;
    case 'time-limit':
      return `Time is up ${at}.`;
  }
}
