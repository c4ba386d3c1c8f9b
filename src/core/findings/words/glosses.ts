import type { RiskId } from '../../risks/types.ts';

/** What every risk is and why it happens, for someone who meets its name for the first time: two sentences. */
const glosses: Readonly<Record<RiskId, string>> = {
  stall:
    'A train stalls when it asks for more pull than its engines give, and comes to rest. Grades and curves ask, weight multiplies it; what is given ends at what the motor can do at its setting or at what the wheels can grip.',
  wheelspin:
    'Driven wheels spin when the force at their rim is more than weight and rail hold, about a fifth of what presses them down. Once loose they hold still less, so a train that spins on a grade as a rule stops there.',
  'buffer-lock':
    'On sharp reverse curves the ends of two vehicles stand so far aside that their buffer heads no longer meet. Pushed together then, one slips behind the other and the pair derails where the curve ends.',
  'coupler-swing':
    'A coupling swings to one side in a curve until it meets its stop. Beyond that the vehicles pull or push each other sideways, and the lighter one leaves the rails.',
  override:
    'Two coupler heads at different heights can slide over each other when pushed, and one end is lifted off the rails. A break of grade, a support out of height, or heads fitted unequally bring it about.',
  parting:
    'Couplings come apart when their heads stand too far apart in height to hold each other, or when they are pulled harder than they can bear. A hump or a dip in the track parts heads, a heavy train on a grade pulls.',
  'wheel-climb':
    'In a curve a flange is pressed sideways against its rail, and when that is much against the weight on the wheel it climbs. Light wheels, sharp curves and couplings that pull or push aside make it worse.',
  'string-lining':
    'A long train under strong pull tries to straighten itself like a taut string and pulls light vehicles over the inner rail of a curve. Weight holds them down; long vehicles next to short ones make it worse.',
  'jack-knife':
    'A vehicle that is pushed hard from both ends in a curve folds out of line like a pocket knife and is pressed over the rail. It takes a push, so it comes with propelled trains, run-ins and heavy trains going down.',
  'axle-lift':
    'A rigid frame or bogie of three axles cannot bend, so where the track dips or humps one of its axles hangs above the rail. Once it hangs by more than the depth of its flange, nothing steers it.',
  grounding:
    'Where the grade changes, the rail comes nearer to the underside of a vehicle: to its middle over a hump, to its ends in a dip. What hangs lowest then touches rail, sleepers or a coupler magnet.',
  headroom:
    'A vehicle needs clear height under the track that crosses over it. On grades and at changes of grade it pitches, and an end stands higher than it does on the level.',
  passing:
    'In curves the middle of a vehicle swings in and its ends swing out, so trains on two tracks side by side need more room than on the straight. Too little and they touch when they meet.',
  overturning:
    'Speed in a curve, and canted rails, press a vehicle towards one side. When the weight no longer falls between the rails it goes over.',
  'bar-lift':
    'A bar between two vehicles can tilt only so far in its seats. Where the grade changes by more than that, the bar lifts the end of the lighter vehicle off the rails.',
  structure:
    'Walls, portals and posts beside the track need room for the ends and middles that swing out in curves. Where they stand too near, a vehicle strikes them.',
};

/** What a risk is and why it happens, in two sentences without jargon. */
export const explainRisk = (risk: RiskId): string => glosses[risk];
