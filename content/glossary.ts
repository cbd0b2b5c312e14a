import { FADE_WIDTH } from '../calculators/model/constants.ts';
import { formatQuantity, toSi } from '../calculators/quantities/index.ts';
import { poundFoot } from '../calculators/quantities/units.ts';
import { DRIVE_HALF_WIDTH, UNIT_HALF_WIDTH } from '../calculators/scenario/doubts.ts';
import { defaultOf } from '../calculators/scenario/schema.ts';

/** A word of the site. `id` is its anchor on `/reference/glossary/` and never changes. */
export interface Term {
  id: string;
  /** as plain text */
  term: string;
  /** as set on the page, where that is more than plain text; HTML */
  label?: string;
  /** one or two plain sentences */
  text: string;
  /** the page that explains it: address from the root, and how the link reads */
  page: readonly [address: string, words: string];
}

/** An assumed efficiency of the calculators with its range, as "0.96 ± 0.02". */
const assumed = (name: 'drive' | 'unit', half: number): string =>
  `${Number(defaultOf('climb-time', name)).toFixed(2)} ± ${half.toFixed(2)}`;

const TORQUE = ['/learn/torque/', 'Torque'] as const;
const POWER = ['/learn/peak-and-rated-power/', 'Peak and rated power'] as const;
const ENERGY = ['/learn/watt-hours/', 'Watt-hours'] as const;
const FORCES = ['/learn/forces-on-a-climb/', 'Forces on a climb'] as const;
const SCALING = ['/learn/scaling-a-climb/', 'Scaling a climb'] as const;
const TESTING = ['/learn/testing-method/', 'Testing method'] as const;
const RANGE = ['/learn/range/', 'Range'] as const;
const PLANNING = ['/test/plan/', 'Plan a test'] as const;
const DAY = ['/test/day/', 'The day itself'] as const;
const READING = ['/learn/reading-a-test/', 'Reading a test'] as const;
const GAIN = ['/learn/scaling-a-climb/#which-gain-figure-is-right', 'Which gain figure is right'] as const;
const HILL = ['/calculators/your-hill/', 'Your hill'] as const;
const FILES = ['/reference/data-files/#recordings', 'Data files'] as const;
const LAW = ['/learn/assist-and-the-law/', 'Assist and the law'] as const;
const PER_KILOGRAM = ['/learn/power-to-weight/', 'Power-to-weight'] as const;
const MODEL = ['/reference/model/', 'The model'] as const;
const LINKS = ['/reference/links/', 'Links'] as const;
const WEIGHT = ['/calculators/power-to-weight/', 'Power-to-weight calculator'] as const;
const CLIMB = ['/calculators/climb-time/', 'Climb-time calculator'] as const;

/** Every trade term that the site uses, in alphabetical order. */
export const glossary: readonly Term[] = [
  {
    id: 'add-on-battery',
    term: 'Add-on battery',
    text: 'A second, smaller battery that is carried along. The calculators let age and cold act on it as on the first; its mass belongs to the bike.',
    page: RANGE,
  },
  {
    id: 'air-density',
    term: 'Air density',
    text: 'Mass of a cubic metre of air, about 1.2 kg near the sea. It falls with altitude and with warmth, and air resistance falls with it.',
    page: FORCES,
  },
  {
    id: 'assist',
    term: 'Assist',
    text: 'Power that the motor adds while the rider pedals. Light, mid and full assist are this site’s three classes of bike, by usual torque and peak power.',
    page: TORQUE,
  },
  {
    id: 'assist-factor',
    term: 'Assist factor',
    text: 'What the motor adds to each watt of the rider, in the words of the law; the calculators call it support and write it in per cent. Few rules limit it.',
    page: LAW,
  },
  {
    id: 'assist-limit',
    term: 'Assist limit',
    text: 'Speed by which the motor must have stopped helping, for example 25 km/h or 20 mph. On a gentle hill it makes strong and weak motors equal.',
    page: SCALING,
  },
  {
    id: 'balanced-order',
    term: 'Balanced order',
    text: 'An order of the runs in which every bike stands early and late alike, such as A, B, C, then C, B, A, or a Latin square. A steady drift over the day then falls on all bikes alike.',
    page: PLANNING,
  },
  {
    id: 'bearings',
    term: 'Bearings',
    text: 'Resistance of the wheel bearings, about a tenth of a newton. The site counts it with rolling.',
    page: MODEL,
  },
  {
    id: 'bias',
    term: 'Bias',
    text: 'An error that has the same sign in every reading, such as a power meter that always reads 2 % high. Repeating a run does not reduce it; between bikes that are much alike the same meter takes most of it away.',
    page: TESTING,
  },
  {
    id: 'binding-limit',
    term: 'Binding limit',
    text: 'What holds a climb back beside power and hill: the assist limit, an empty battery, heat in the motor, torque or support, the rider’s endurance, or a grade too far from the measured one.',
    page: SCALING,
  },
  {
    id: 'break',
    term: 'Break',
    text: 'A place where a recording was interrupted: a new stretch begins, the timer was stopped, or nothing was recorded for long. No distance, height or time is counted across it.',
    page: FILES,
  },
  {
    id: 'c-da',
    term: 'C_dA',
    label: 'C<sub>d</sub>A',
    text: 'Drag area: the drag coefficient times the frontal area, in square metres. It says how large rider and bike look to the air; about 0.36 to 0.56 m² for seated to upright riders.',
    page: FORCES,
  },
  {
    id: 'c-rr',
    term: 'C_rr',
    label: 'C<sub>rr</sub>',
    text: 'Coefficient of rolling resistance: the rolling force divided by the force of the bike on the ground. It belongs to the tyre and the surface together.',
    page: FORCES,
  },
  {
    id: 'cadence',
    term: 'Cadence',
    text: 'Turns of the crank per minute (rpm). Power is torque times cadence.',
    page: TORQUE,
  },
  {
    id: 'calibration',
    term: 'Calibration',
    text: 'Working out from control runs, or from a recorded ride without assistance, what the hill asks for, before anything is said about a motor. Here it gives an effective rolling resistance.',
    page: TESTING,
  },
  {
    id: 'class-1-2-3',
    term: 'Class 1, 2, 3',
    text: 'Three classes of American rules, up to 750 W: help only while pedalling to 20 mph, drive without pedalling to 20 mph, help only while pedalling to 28 mph.',
    page: LAW,
  },
  {
    id: 'control-run',
    term: 'Control run',
    text: 'A timed run of the same hill without assistance at a known rider power. It calibrates the hill, so that errors of mass, height and surface mostly cancel.',
    page: TESTING,
  },
  {
    id: 'crank',
    term: 'Crank',
    text: 'The arms that the pedals turn. Rider and mid-drive power are both counted here; the chain then takes a few per cent on the way to the wheel.',
    page: FORCES,
  },
  {
    id: 'critical-power',
    term: 'Critical power',
    text: 'The power that a rider can hold for a long time; above it a fixed store of work runs down. It comes from several all-out efforts and is unsure by some per cent.',
    page: PER_KILOGRAM,
  },
  {
    id: 'detectable-difference',
    term: 'Detectable difference',
    text: 'The smallest true difference that a plan would show in eight or nine of ten tests. A smaller one may be there and not be found.',
    page: PLANNING,
  },
  {
    id: 'drift',
    term: 'Drift',
    text: 'A change that goes one way through the day: a meter that warms, wind that rises, legs that tire, ground that dries.',
    page: TESTING,
  },
  {
    id: 'drive-efficiency',
    term: 'Drive efficiency',
    text: `Share of the power at the crank that reaches the wheel through chain and gears. The site takes ${assumed('drive', DRIVE_HALF_WIDTH)}, an assumption.`,
    page: FORCES,
  },
  {
    id: 'drive-unit',
    term: 'Drive unit',
    text: `Motor, gears and electronics in one housing. Its efficiency, from battery to crank, decides what a climb takes from the battery; the site takes ${assumed('unit', UNIT_HALF_WIDTH)}, an assumption.`,
    page: ENERGY,
  },
  {
    id: 'effective-rolling',
    term: 'Effective rolling resistance',
    text: 'The rolling resistance that makes the model agree with the control runs. It swallows the errors of mass, height and meter, so it is good on that hill and that surface, not as a figure for the tyre.',
    page: TESTING,
  },
  {
    id: 'epac',
    term: 'EPAC',
    text: 'Electrically power assisted cycle: the name in European standards for a bicycle with pedal assistance, a rated power up to 250 W and an assist limit of 25 km/h.',
    page: LAW,
  },
  {
    id: 'fade',
    term: 'Fade',
    text: `The last stretch below the assist limit, in which the motor gives less and less. The site takes it as linear over ${formatQuantity(FADE_WIDTH, 'speed', 'metric', { digits: 0 })}, an assumption.`,
    page: SCALING,
  },
  {
    id: 'gain',
    term: 'Gain',
    text: 'Height climbed from bottom to top, vertically. Also called ascent or climbing. Of a recording there are several figures for it.',
    page: GAIN,
  },
  {
    id: 'gap',
    term: 'Gap',
    text: 'Time between two bikes at the top. It has a range of its own, narrower than the ranges of the two times suggest, because what both runs share drops out.',
    page: READING,
  },
  {
    id: 'gauge',
    term: 'Gauge',
    text: 'The display of what is left in the battery, in per cent or bars. It counts what the bike lets you use and moves in steps, so each reading may be off by half a step.',
    page: RANGE,
  },
  {
    id: 'geodesic-distance',
    term: 'Geodesic distance',
    text: 'Length of the shortest line between two positions on the ellipsoid that the Earth nearly is. On a sphere it would be wrong by more than half a per cent in places.',
    page: MODEL,
  },
  {
    id: 'grade',
    term: 'Grade',
    text: 'Steepness: height gained over horizontal distance, in per cent. Over the distance along the road the ratio is slightly smaller; at 10 % the two differ by half a per cent.',
    page: FORCES,
  },
  {
    id: 'half-width',
    term: 'Half-width',
    text: 'Half of a range: with ±12 W the range reaches 12 W to either side of the value.',
    page: TESTING,
  },
  {
    id: 'head-wind',
    term: 'Head wind',
    text: 'Wind against the direction of travel, at the rider’s height. A tail wind is a negative head wind.',
    page: FORCES,
  },
  {
    id: 'hub-motor',
    term: 'Hub motor',
    text: 'A motor in the wheel. The bike’s gears do not help it, and its torque is given at the wheel, so it cannot be compared with that of a mid-drive.',
    page: TORQUE,
  },
  {
    id: 'inferred-motor-power',
    term: 'Inferred motor power',
    text: 'What the motor must have given for the measured time: the power at the crank that the speed asks for, less the rider’s power. It is a mean over the climb.',
    page: TESTING,
  },
  {
    id: 'isa',
    term: 'ISA',
    text: 'International Standard Atmosphere: agreed temperature and pressure for each altitude. The site takes the pressure from it when only the altitude is known.',
    page: MODEL,
  },
  {
    id: 'kinetic-energy',
    term: 'Kinetic energy',
    text: 'What moves carries energy, half its mass times the square of its speed. It is paid when the bike speeds up and comes back when it slows down, unless it is braked away.',
    page: MODEL,
  },
  {
    id: 'l1e',
    term: 'L1e-A, L1e-B',
    text: 'European classes of approved vehicles that assisted bicycles fall into when they help with more rated power or to a higher speed than a bicycle may.',
    page: LAW,
  },
  {
    id: 'limiter',
    term: 'Limiter',
    text: 'What in a bike’s electronics ends the help at the assist limit. With another setting the bike may be another vehicle in law.',
    page: LAW,
  },
  {
    id: 'mid-drive',
    term: 'Mid-drive',
    text: 'A motor at the crank. It drives the wheel through the chain and gains from a low gear as the legs do.',
    page: TORQUE,
  },
  {
    id: 'modelled-time',
    term: 'Modelled time',
    text: 'Time on another hill worked out from the forces there, with the motor and the rolling resistance found on the measured hill.',
    page: SCALING,
  },
  {
    id: 'monte-carlo',
    term: 'Monte Carlo',
    text: 'Drawing every doubtful input at random, thousands of times, and reading the range off the results. It holds where adding errors in squares does not.',
    page: MODEL,
  },
  {
    id: 'newton-metre',
    term: 'Newton metre',
    text: `The unit of torque, N·m: a push of one newton at the end of a lever of one metre. A pound-foot is about ${formatQuantity(toSi(1, poundFoot), 'torque', 'metric', { digits: 2 })}.`,
    page: TORQUE,
  },
  {
    id: 'nominal-energy',
    term: 'Nominal energy',
    text: 'What the label of a battery says: nominal volts times rated amp-hours. The usable energy is less.',
    page: ENERGY,
  },
  {
    id: 'normalised-time',
    term: 'Normalised time',
    text: 'The time that a run would have taken at the target power, with the same rider on the bike’s own mass. Also called time at target power.',
    page: DAY,
  },
  {
    id: 'paired-experiment',
    term: 'Paired experiment',
    text: 'A test of one thing on one bike: other tyres, added mass, another setting. Everything else stays, so its errors drop out of the difference.',
    page: DAY,
  },
  {
    id: 'peak-power',
    term: 'Peak power',
    text: 'The most that a motor gives for a short time. It is what climbs, as long as heat, battery and the rider allow.',
    page: POWER,
  },
  {
    id: 'power-meter',
    term: 'Power meter',
    text: 'An instrument in pedal, crank or hub that measures power. One in the hub reads the motor with the rider.',
    page: TESTING,
  },
  {
    id: 'power-to-weight',
    term: 'Power-to-weight (W/kg)',
    text: 'Power divided by mass. The site divides by body and kit unless it says otherwise, and shows it with and without the motor.',
    page: PER_KILOGRAM,
  },
  {
    id: 'profile',
    term: 'Profile',
    text: 'Heights of a road over the distance along it. A hill that is passed on has it in pieces of one grade each.',
    page: HILL,
  },
  {
    id: 'proportional-time',
    term: 'Proportional time',
    text: 'Time on another hill by the rule of three: time multiplied by the ratio of the heights. It holds on the same grade and surface until something runs out.',
    page: SCALING,
  },
  {
    id: 'range-95',
    term: 'Range, 95 %',
    text: 'From a low to a high value, made so that the true value should lie between them in 95 of 100 cases, if the stated uncertainties of the inputs are right.',
    page: MODEL,
  },
  {
    id: 'rated-power',
    term: 'Rated power',
    text: 'In European and British law the power that a motor can give for thirty minutes on a test bench. It says which class a bike belongs to, not how it climbs.',
    page: POWER,
  },
  {
    id: 'repeatability',
    term: 'Repeatability',
    text: 'How closely an instrument or a run repeats itself when nothing has changed. Unlike bias, it becomes smaller in a mean of several runs.',
    page: TESTING,
  },
  {
    id: 'reserve',
    term: 'Reserve',
    text: 'Share of the battery that you mean to bring home. The calculators count the battery as empty when only the reserve is left.',
    page: RANGE,
  },
  {
    id: 'rider-mass',
    term: 'Rider, body and kit',
    text: 'Mass of the body with everything worn and carried: clothes, shoes, helmet, bag, water. The bike is counted apart, with its battery.',
    page: LINKS,
  },
  {
    id: 'rider-power',
    term: 'Rider power',
    text: 'What the legs give at the crank, as a mean over the climb. The calculators hold it from bottom to top.',
    page: FORCES,
  },
  {
    id: 'rolling-resistance',
    term: 'Rolling resistance',
    text: 'Force lost in tyre and ground. On a rough trail it is a large part of what holds a climbing bike back.',
    page: FORCES,
  },
  {
    id: 'route',
    term: 'Route',
    text: 'A way that somebody drew, without times: a hill without a ride. What was ridden is a track.',
    page: FILES,
  },
  {
    id: 'saturation',
    term: 'Saturation',
    text: 'The motor gives all it can, and more from the rider brings no more from the motor. A run at a fifth more rider power shows it.',
    page: TESTING,
  },
  {
    id: 'scatter',
    term: 'Scatter',
    text: 'How far runs of the same bike at the same power differ from one another. Repeats show it, and means of repeats make less of it.',
    page: TESTING,
  },
  {
    id: 'scenario',
    term: 'Scenario',
    text: 'Everything a calculator is set to: hill, rider, bikes, conditions. Its link holds all of it.',
    page: LINKS,
  },
  {
    id: 'share-of-battery',
    term: 'Share of the battery',
    text: 'Energy that a climb takes from the battery, divided by its nominal energy. Above 100 % the climb cannot be finished with that battery.',
    page: ENERGY,
  },
  {
    id: 'smoothing-window',
    term: 'Smoothing window',
    text: 'Length of road over which recorded heights are averaged before their rises are added up. A longer one takes out more noise, and small dips with it.',
    page: GAIN,
  },
  {
    id: 'start-assistance',
    term: 'Start assistance',
    text: 'Help at walking pace without pedalling, as long as the rider keeps a switch on; to 6 km/h in the European standard.',
    page: LAW,
  },
  {
    id: 'support',
    term: 'Support',
    text: 'Motor power as a percentage of rider power. At 200 % the motor adds two watts to each watt of the legs, up to its peak.',
    page: POWER,
  },
  {
    id: 'target-power',
    term: 'Target power',
    text: 'The rider power that all runs of a test aim at, and that their times are compared at.',
    page: TESTING,
  },
  {
    id: 'threshold',
    term: 'Threshold',
    text: 'Rise from which on an ascent counts; smaller ups and downs count as noise. It is one way to add up a gain.',
    page: GAIN,
  },
  {
    id: 'throttle',
    term: 'Throttle',
    text: 'A control that drives the bike by its motor without pedalling. Where it is allowed, and to which speed, differs from law to law.',
    page: LAW,
  },
  {
    id: 'torque',
    term: 'Torque',
    text: 'How hard something is turned, in newton metres; of a motor, how hard it turns the crank. Torque without cadence says nothing about power.',
    page: TORQUE,
  },
  {
    id: 'track',
    term: 'Track',
    text: 'Points of a recorded ride in their order, with the time at each.',
    page: FILES,
  },
  {
    id: 'type-approval',
    term: 'Type approval',
    text: 'An authority’s finding that a kind of vehicle meets the rules. Bicycles need none; what counts as a moped or a motorcycle does.',
    page: LAW,
  },
  {
    id: 'unassisted-equivalent',
    term: 'Unassisted equivalent',
    text: 'The power, per kilogram of rider, that would climb as fast on the same bike with the motor off.',
    page: WEIGHT,
  },
  {
    id: 'uncertainty',
    term: 'Uncertainty',
    text: 'How far a value may be from the truth, as far as we can tell. It comes from the stated errors of the inputs, not from a guess about the result.',
    page: MODEL,
  },
  {
    id: 'usable-energy',
    term: 'Usable energy',
    text: 'What a battery really gives before the bike stops it: nominal energy less reserve, age and cold. A gauge shows per cent of this.',
    page: ENERGY,
  },
  {
    id: 'vertical-speed',
    term: 'Vertical speed',
    text: 'Height gained per time, in metres or feet per hour (m/h, ft/h); riders also say VAM. It compares climbs of similar grade better than the speed along the road.',
    page: CLIMB,
  },
  {
    id: 'virtual-elevation',
    term: 'Virtual elevation',
    text: 'A way to find rolling and air resistance: work out from power and speed the profile that the bike should have climbed, and adjust until it agrees with the true one.',
    page: FORCES,
  },
  {
    id: 'work-above-critical-power',
    term: 'W′ (work above critical power)',
    text: 'The store of work, in joules, that a rider can spend above critical power. When it is empty, only critical power is left.',
    page: PER_KILOGRAM,
  },
  {
    id: 'watt',
    term: 'Watt',
    text: 'The unit of power, W: one joule per second. Holding a mass of 1 kg against gravity costs no power; lifting it by 10 cm each second costs about one watt.',
    page: POWER,
  },
  {
    id: 'watt-hour',
    term: 'Watt-hour',
    text: 'The unit of a battery’s energy, Wh: one watt for one hour, 3 600 joules.',
    page: ENERGY,
  },
];
