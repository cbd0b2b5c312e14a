import type { Formula } from './formula.ts';

/*
 * Every relation of the model, once. The page's typesetting, the check of dimensions and the test that the fast functions in
 * `model/` compute the same all come from these expressions.
 */

type Symbol = Formula['symbols'][string];
const symbol = (meaning: string, unit: string, tex: string): Symbol => ({ meaning, unit, tex });

const L = symbol('distance along the road', 'm', 'L');
const H = symbol('height gained', 'm', 'H');
const m = symbol('mass of everything that moves', 'kg', 'm');
const g = symbol('standard gravity, 9.80665 m/s²', 'm / s^2', 'g');
const v = symbol('speed along the road', 'm / s', 'v');
const w = symbol('head wind (tail wind negative)', 'm / s', 'w');
const t = symbol('time', 's', 't');
const C_rr = symbol('coefficient of rolling resistance', '1', 'C_\\mathrm{rr}');
const C_dA = symbol('drag area', 'm^2', 'C_\\mathrm{d}A');
const rho = symbol('density of the air', 'kg / m^3', '\\rho');
const eta = symbol('efficiency of the drive, crank to wheel', '1', '\\eta');
const F_gravity = symbol('force of gravity along the road', 'N', 'F_\\mathrm{gravity}');
const F_rolling = symbol('rolling resistance', 'N', 'F_\\mathrm{rolling}');
const F_air = symbol('air resistance', 'N', 'F_\\mathrm{air}');
const F_bearings = symbol('resistance of the wheel bearings', 'N', 'F_\\mathrm{bearings}');
const P_crank = symbol('power at the crank, rider and motor', 'W', 'P_\\mathrm{crank}');
const P_rider = symbol('power of the rider', 'W', 'P_\\mathrm{rider}');
const P_motor = symbol('power of the motor at the crank', 'W', 'P_\\mathrm{motor}');
const P_control = symbol('power of the rider in the control run', 'W', 'P_\\mathrm{control}');
const E = symbol('energy drawn from the battery', 'J', 'E');
const eta_unit = symbol('efficiency of the drive unit, battery to crank', '1', '\\eta_\\mathrm{unit}');
const tau = symbol('torque at the crank', 'N m', '\\tau');
const n = symbol('cadence, turns of the crank per time', '1 / s', 'n');
const n_rider = symbol('cadence that the rider keeps', '1 / s', 'n_\\mathrm{rider}');
const r_wheel = symbol('rolling radius of the wheel', 'm', 'r');
const ratio = symbol('turns of the wheel for one of the crank: teeth in front over teeth behind', '1', 'i');
const F_wheel = symbol('force at the ground', 'N', 'F_\\mathrm{wheel}');
const G = symbol('grade, the tangent of the slope angle', '1', 'G');
const k = symbol('torque over the torque that is held for ever', '1', 'k');
const alpha = symbol('fixed losses over the copper losses at the torque held for ever', '1', '\\alpha');
const K = symbol('final rise of temperature over the permitted one', '1', 'K');
const theta_0 = symbol('rise at the start over the permitted one', '1', '\\vartheta_0');
const tau_warm = symbol('time constant of warming', 's', 'T_\\mathrm{warm}');
const E_usable = symbol('energy that can be used', 'J', 'E_\\mathrm{usable}');
const E_battery = symbol('nominal energy', 'J', 'E_\\mathrm{battery}');
const E_gauge = symbol('energy used by the gauge', 'J', 'E_\\mathrm{gauge}');
const p = symbol('air pressure', 'Pa', 'p');
const T = symbol('air temperature, kelvin', 'K', 'T');
const T_s = symbol(
  'temperature of the standard atmosphere at that altitude, whatever was measured',
  'K',
  'T_\\mathrm{s}',
);
const P_given = symbol('power of the motor after the fade', 'W', 'P_\\mathrm{given}');
const celsius = symbol('air temperature above 273.15 K, that is in °C', 'K', 't');
const x_v = symbol('share of water vapour in the air', '1', 'x_\\mathrm{v}');
const p_sv = symbol('saturation pressure of water vapour', 'Pa', 'p_\\mathrm{sv}');
const f_w = symbol('enhancement factor', '1', 'f');
const Z = symbol('compressibility of moist air', '1', 'Z');

const u_c = symbol('combined standard uncertainty', 'W', 'u_\\mathrm{c}');
const u_d = symbol('standard uncertainty of the difference', 'W', 'u_\\mathrm{d}');

const SOURCE = 'martin-1998';

export const formulas: readonly Formula[] = [
  {
    id: 'slope-sine',
    title: 'Slope from distance and height',
    result: 'sin_theta',
    expression: 'H / L',
    symbols: { sin_theta: symbol('sine of the slope angle', '1', '\\sin\\theta'), H, L },
    source: 'definition',
    note: 'A wheel or a track measures along the road, so the ratio is the sine, not the tangent.',
  },
  {
    id: 'grade',
    title: 'Grade',
    result: 'G',
    expression: 'H / sqrt(L^2 - H^2)',
    symbols: { G: symbol('grade, the tangent of the slope angle', '1', '\\tan\\theta'), H, L },
    source: 'definition',
    note: 'At 10 % the tangent is half a percent larger than the sine.',
  },
  {
    id: 'vertical-speed',
    title: 'Climbing speed',
    result: 'v_up',
    expression: 'v * H / L',
    symbols: { v_up: symbol('height gained per time', 'm / s', 'v_\\mathrm{up}'), v, H, L },
    source: 'definition',
  },
  {
    id: 'gravity-force',
    title: 'Gravity',
    result: 'F_gravity',
    expression: 'm * g * H / L',
    symbols: { F_gravity, m, g, H, L },
    source: SOURCE,
  },
  {
    id: 'rolling-force',
    title: 'Rolling resistance',
    result: 'F_rolling',
    expression: 'm * g * C_rr * sqrt(1 - (H / L)^2)',
    symbols: { F_rolling, m, g, C_rr, H, L },
    source: SOURCE,
  },
  {
    id: 'air-force',
    title: 'Air resistance',
    result: 'F_air',
    expression: '0.5 * rho * C_dA * (v + w) * abs(v + w)',
    symbols: { F_air, rho, C_dA, v, w },
    source: SOURCE,
    note: 'A tail wind faster than the bike pushes, hence the absolute value. Rotation of the wheels is left to the drag area, which a field measurement holds already.',
  },
  {
    id: 'bearings-force',
    title: 'Wheel bearings',
    result: 'F_bearings',
    expression: 'F_0 + k_b * v',
    symbols: {
      F_bearings,
      F_0: symbol('constant part, 0.091 N', 'N', 'F_0'),
      k_b: symbol('part that grows with speed, 0.0087 N per m/s', 'N s / m', 'k_\\mathrm{b}'),
      v,
    },
    source: SOURCE,
    note: 'Counted with rolling in every table.',
  },
  {
    id: 'crank-power',
    title: 'Power at the crank for a steady speed',
    result: 'P_crank',
    expression: 'v * (F_gravity + F_rolling + F_air + F_bearings) / eta',
    symbols: { P_crank, v, F_gravity, F_rolling, F_air, F_bearings, eta },
    source: SOURCE,
    note: 'Solved for the speed when the power is given: the resistance grows with speed, so there is exactly one answer.',
  },
  {
    id: 'acceleration',
    title: 'Speeding up and slowing down',
    result: 'a',
    expression: '(eta * P_crank - v * (F_gravity + F_rolling + F_air + F_bearings)) / (m * v)',
    symbols: {
      a: symbol('change of speed per time', 'm / s^2', 'a'),
      eta,
      P_crank,
      v,
      F_gravity,
      F_rolling,
      F_air,
      F_bearings,
      m,
    },
    source: SOURCE,
    note: 'The steady speed is where this is zero. What the spinning wheels add to the mass, about a kilogram and a half, is left out.',
  },
  {
    id: 'kinetic-energy',
    title: 'Kinetic energy',
    result: 'E_kinetic',
    expression: 'm * v^2 / 2',
    symbols: { E_kinetic: symbol('energy of what moves', 'J', 'E_\\mathrm{kinetic}'), m, v },
    source: 'definition',
    note: 'Paid on the way to a higher speed and paid back on the way down from it, but for what the brakes take.',
  },
  {
    id: 'climb-time',
    title: 'Time of the climb',
    result: 't',
    expression: 'L / v',
    symbols: { t, L, v },
    source: 'definition',
  },
  {
    id: 'assist-fade',
    title: 'Motor near the assist limit',
    result: 'P_given',
    expression: 'P_motor * min(1, max(0, (v_limit - v) / v_fade))',
    symbols: {
      P_given,
      P_motor,
      v,
      v_limit: symbol('assist limit', 'm / s', 'v_\\mathrm{limit}'),
      v_fade: symbol('width of the fade, 2 km/h (an assumption)', 'm / s', 'v_\\mathrm{fade}'),
    },
    source: 'eu-168-2013',
    note: 'The law asks for a progressive reduction before the limit; its shape and width here are ours.',
  },
  {
    id: 'torque-power',
    title: 'Power from torque and cadence',
    result: 'P',
    expression: '2 * pi * n * tau',
    symbols: {
      P: symbol('power', 'W', 'P'),
      tau,
      n,
    },
    source: 'definition',
  },
  {
    id: 'motor-output',
    title: 'What a motor gives at most',
    result: 'P_motor',
    expression: 'min(P_peak, s * P_rider, 2 * pi * n * tau)',
    symbols: {
      P_motor,
      P_peak: symbol('peak power', 'W', 'P_\\mathrm{peak}'),
      s: symbol('support, motor power for each watt of the rider', '1', 's'),
      P_rider,
      n,
      tau: symbol('largest torque of the motor at the crank', 'N m', '\\tau'),
    },
    source: 'definition',
    note: 'The least of the three binds; nothing while the rider does not pedal. What heat allows and the fade before the assist limit come on top.',
  },
  {
    id: 'torque-cadence',
    title: 'Cadence from which torque no longer limits',
    result: 'n',
    expression: 'P / (2 * pi * tau)',
    symbols: { n, P: symbol('power', 'W', 'P'), tau },
    source: 'definition',
  },
  {
    id: 'gear-cadence',
    title: 'Cadence in the lowest gear',
    result: 'n',
    expression: 'min(n_rider, v / (2 * pi * r_wheel * i_gear))',
    symbols: { n, n_rider, v, r_wheel, i_gear: ratio },
    source: 'definition',
    note: 'While another gear is left, the rider keeps the cadence; in the lowest one it falls with the speed.',
  },
  {
    id: 'wheel-force',
    title: 'Force at the ground',
    result: 'F_wheel',
    expression: 'tau / (i_gear * r_wheel)',
    symbols: { F_wheel, tau, i_gear: ratio, r_wheel },
    source: 'definition',
    note: 'Nothing lost on the way. For a motor in the hub the ratio is 1, whatever the gear.',
  },
  {
    id: 'pedal-torque',
    title: 'Torque of a foot on a level pedal',
    result: 'tau',
    expression: 'F_pedal * l_crank',
    symbols: {
      tau,
      F_pedal: symbol('force straight down on the pedal', 'N', 'F_\\mathrm{pedal}'),
      l_crank: symbol('length of the crank', 'm', 'l_\\mathrm{crank}'),
    },
    source: 'definition',
  },
  {
    id: 'holding-force',
    title: 'Force that holds a slope',
    result: 'F_wheel',
    expression: 'm * g * (G + C_rr) / sqrt(1 + G^2)',
    symbols: { F_wheel, m, g, G, C_rr },
    source: SOURCE,
    note: 'Gravity and rolling at a crawl: no air, and nothing left to speed up with.',
  },
  {
    id: 'steepest-grade',
    title: 'Steepest grade that a force holds',
    result: 'G',
    expression: 'tan(asin(F_wheel / (m * g * sqrt(1 + C_rr^2))) - atan(C_rr))',
    symbols: { G, F_wheel, m, g, C_rr },
    source: SOURCE,
    note: 'The formula above the other way round. A tyre that slips or a front wheel that lifts may come first.',
  },
  {
    id: 'torque-ratio',
    title: 'Torque over the torque held for ever',
    result: 'k',
    expression: 'P_motor * n_lasting / (P_lasting * n)',
    symbols: {
      k,
      P_motor,
      n,
      P_lasting: symbol('power held for ever', 'W', 'P_\\mathrm{lasting}'),
      n_lasting: symbol('cadence at which that is stated', '1 / s', 'n_\\mathrm{lasting}'),
    },
    source: 'definition',
  },
  {
    id: 'final-rise',
    title: 'Where the temperature would end',
    result: 'K',
    expression: '(k^2 + alpha) / (1 + alpha)',
    symbols: { K, k, alpha },
    source: 'subrahmanyam',
    note: 'Losses in the copper go with the square of the torque, the others are taken as fixed. At 1 the motor may stay for ever.',
  },
  {
    id: 'rise-after',
    title: 'Temperature on the way there',
    result: 'theta',
    expression: 'K + (theta_0 - K) * exp(-t / tau_warm)',
    symbols: {
      theta: symbol('rise over the permitted one', '1', '\\vartheta'),
      K,
      theta_0,
      t,
      tau_warm,
    },
    source: 'subrahmanyam',
    note: 'One body with one time constant. A real motor has at least two: its winding warms in a minute or so, its housing in many (from memory).',
  },
  {
    id: 'hold-time',
    title: 'How long a torque is held',
    result: 't',
    expression: 'tau_warm * log((K - theta_0) / (K - 1))',
    symbols: { t, tau_warm, K, theta_0 },
    source: 'subrahmanyam',
    note: 'For a final rise above 1; at or below it there is no end.',
  },
  {
    id: 'short-time-overload',
    title: 'Torque that is held for a time, from cold',
    result: 'k',
    expression: 'sqrt((1 + alpha) / (1 - exp(-t / tau_warm)) - alpha)',
    symbols: { k, alpha, t, tau_warm },
    source: 'subrahmanyam',
    note: 'The formula above the other way round; duty S2 of the standard for electric machines.',
  },
  {
    id: 'intermittent-overload',
    title: 'Torque that is held again and again',
    result: 'k',
    expression:
      'sqrt((1 + alpha) * (1 - exp(-(t_on / tau_warm + t_off / tau_cool))) / (1 - exp(-t_on / tau_warm)) - alpha)',
    symbols: {
      k,
      alpha,
      t_on: symbol('time under load', 's', 't_\\mathrm{on}'),
      t_off: symbol('time at rest, nothing switched on', 's', 't_\\mathrm{off}'),
      tau_warm,
      tau_cool: symbol('time constant of cooling at rest', 's', 'T_\\mathrm{cool}'),
    },
    source: 'subrahmanyam',
    note: 'Duty S3 of the standard for electric machines.',
  },
  {
    id: 'endurance-time',
    title: 'How long a rider lasts',
    result: 't',
    expression: 'W_above / (P_rider - P_critical)',
    symbols: {
      t,
      W_above: symbol('work that can be done above critical power', 'J', 'W^{\\prime}'),
      P_rider,
      P_critical: symbol('critical power, held for long', 'W', 'P_\\mathrm{critical}'),
    },
    source: 'monod-scherrer-1965',
    note: 'For a power above the critical one, and for about 2 to 30 minutes.',
  },
  {
    id: 'work-recovered',
    title: 'Work above critical power on the mend',
    result: 'W_spent',
    expression: 'W_before * exp(-(P_critical - P_rest) * t / W_above)',
    symbols: {
      W_spent: symbol('work still spent after a rest', 'J', 'W_\\mathrm{spent}'),
      W_before: symbol('work spent at its start', 'J', 'W_\\mathrm{before}'),
      P_critical: symbol('critical power, held for long', 'W', 'P_\\mathrm{critical}'),
      P_rest: symbol('power while resting or riding down', 'W', 'P_\\mathrm{rest}'),
      t,
      W_above: symbol('work that can be done above critical power', 'J', 'W^{\\prime}'),
    },
    source: 'skiba-2015',
    note: 'While riding above critical power the work spent grows by the watts above it. The plan asks this before it asks for another run.',
  },
  {
    id: 'start-test-power',
    title: 'Mean wheel power of a start from rest',
    result: 'P',
    expression: '2 * m * D^2 / t^3',
    symbols: { P: symbol('power at the wheel', 'W', 'P'), m, D: symbol('length of the start', 'm', 'D'), t },
    source: 'en-15194-2009',
    note: 'Level ground, constant acceleration: the kinetic energy gained, divided by the time. Rider and motor together.',
  },
  {
    id: 'nominal-energy',
    title: 'Nominal energy of a battery',
    result: 'E_battery',
    expression: 'U * Q',
    symbols: {
      E_battery,
      U: symbol('nominal voltage', 'V', 'U'),
      Q: symbol('rated charge', 'A s', 'Q'),
    },
    source: 'definition',
  },
  {
    id: 'lift-energy',
    title: 'Energy to lift a mass',
    result: 'E_lift',
    expression: 'm * g * H',
    symbols: { E_lift: symbol('energy against gravity alone', 'J', 'E_\\mathrm{lift}'), m, g, H },
    source: 'definition',
  },
  {
    id: 'battery-energy',
    title: 'Energy from the battery',
    result: 'E',
    expression: 'P_given * t / eta_unit',
    symbols: { E, P_given, t, eta_unit },
    source: 'definition',
  },
  {
    id: 'battery-share',
    title: 'Share of the battery',
    result: 's',
    expression: 'E / E_battery',
    symbols: {
      s: symbol('share of the nominal energy', '1', 's'),
      E,
      E_battery,
    },
    source: 'definition',
  },
  {
    id: 'usable-energy',
    title: 'Energy that can be used',
    result: 'E_usable',
    expression: 'E_battery * k_health * k_cold * (1 - k_reserve)',
    symbols: {
      E_usable,
      E_battery,
      k_health: symbol('capacity now over capacity when new', '1', 'k_\\mathrm{health}'),
      k_cold: symbol('share that the cold leaves', '1', 'k_\\mathrm{cold}'),
      k_reserve: symbol('share that is kept in reserve', '1', 'k_\\mathrm{reserve}'),
    },
    source: 'assumption',
    note: 'An added battery counts with the same shares. That age, cold and reserve multiply is our simplification.',
  },
  {
    id: 'drawn-power',
    title: 'Power from the battery',
    result: 'P_drawn',
    expression: 'P_given / eta_unit + P_idle',
    symbols: {
      P_drawn: symbol('power drawn from the battery', 'W', 'P_\\mathrm{drawn}'),
      P_given,
      eta_unit,
      P_idle: symbol('power of display, controller and lights', 'W', 'P_\\mathrm{idle}'),
    },
    source: 'definition',
  },
  {
    id: 'gauge-energy',
    title: 'Energy by the gauge',
    result: 'E_gauge',
    expression: 'E_full * (s_start - s_end)',
    symbols: {
      E_gauge,
      E_full: symbol('what the full battery gives', 'J', 'E_\\mathrm{full}'),
      s_start: symbol('reading at the start', '1', 's_\\mathrm{start}'),
      s_end: symbol('reading at the end', '1', 's_\\mathrm{end}'),
    },
    source: 'definition',
    note: 'Each reading may be off by half a step of the gauge, so the difference by a whole step either way.',
  },
  {
    id: 'implied-efficiency',
    title: 'Efficiency that a gauge implies',
    result: 'eta_unit',
    expression: 'P_given * t / E_gauge',
    symbols: { eta_unit, P_given, t, E_gauge },
    source: 'definition',
  },
  {
    id: 'control-rolling',
    title: 'Rolling resistance from one control run',
    result: 'C_rr',
    expression: '(eta * P_control / v - m * g * H / L - F_air - F_bearings) / (m * g * sqrt(1 - (H / L)^2))',
    symbols: { C_rr, eta, P_control, v, m, g, H, L, F_air, F_bearings },
    source: SOURCE,
    note: 'An effective value: it also swallows the errors of mass, height and meter. With several control runs the drag area joins a weighted fit, held by its prior.',
  },
  {
    id: 'ride-rolling',
    title: 'Rolling resistance from a recorded ride',
    result: 'C_rr',
    expression: '(eta * E_rider - m * g * H - E_air - E_bearings - E_faster) / (m * g * L_level)',
    symbols: {
      C_rr,
      eta,
      E_rider: symbol('energy by the power meter', 'J', 'E_\\mathrm{rider}'),
      m,
      g,
      H,
      E_air: symbol('energy that the air took', 'J', 'E_\\mathrm{air}'),
      E_bearings: symbol('energy that the bearings took', 'J', 'E_\\mathrm{bearings}'),
      E_faster: symbol('kinetic energy at the end less that at the start', 'J', '\\Delta E_\\mathrm{kinetic}'),
      L_level: symbol('length of the way seen from above', 'm', 'L_\\mathrm{level}'),
    },
    source: 'definition',
    note: 'Balanced for each piece of the way, and all pieces fitted together. An effective value, as from a control run.',
  },
  {
    id: 'motor-from-time',
    title: 'Motor power from a time',
    result: 'P_motor',
    expression: 'P_crank - P_rider',
    symbols: { P_motor, P_crank, P_rider },
    source: 'definition',
    note: 'The crank power is that of the measured mean speed on the calibrated hill.',
  },
  {
    id: 'motor-by-ratio',
    title: 'The same in one line, leaving out the air',
    result: 'P_motor',
    expression: 'P_control * (t_control / t_assisted) * (m_assisted / m_control) - P_rider',
    symbols: {
      P_motor,
      P_control,
      t_control: symbol('time of the control run', 's', 't_\\mathrm{control}'),
      t_assisted: symbol('time of the assisted run', 's', 't_\\mathrm{assisted}'),
      m_assisted: symbol('mass in the assisted run', 'kg', 'm_\\mathrm{assisted}'),
      m_control: symbol('mass in the control run', 'kg', 'm_\\mathrm{control}'),
      P_rider,
    },
    source: 'definition',
    note: 'Height and surface cancel. The extra air at the higher speed is missing, so it reads a few percent low.',
  },
  {
    id: 'combined-uncertainty',
    title: 'Two doubts put together',
    result: 'u_c',
    expression: 'sqrt(u_1^2 + u_2^2 + 2 * r * u_1 * u_2)',
    symbols: {
      u_c,
      u_1: symbol('what the first doubt moves the result by', 'W', 'u_1'),
      u_2: symbol('what the second doubt moves it by', 'W', 'u_2'),
      r: symbol('correlation of the two, 0 where they have nothing to do with each other', '1', 'r'),
    },
    source: 'jcgm-100',
    note: 'Standard uncertainties, here of a power. More than two are added in the same way. What two bikes share moves both at once, so in their difference it enters as what it moves the difference by.',
  },
  {
    id: 'effective-freedom',
    title: 'How well that doubt itself is known',
    result: 'nu_c',
    expression: 'u_c^4 / (u_1^4 / nu_1 + u_2^4 / nu_2)',
    symbols: {
      nu_c: symbol('effective degrees of freedom', '1', '\\nu_\\mathrm{c}'),
      u_c,
      u_1: symbol('first part', 'W', 'u_1'),
      nu_1: symbol('degrees of freedom of the first part', '1', '\\nu_1'),
      u_2: symbol('second part', 'W', 'u_2'),
      nu_2: symbol('degrees of freedom of the second part', '1', '\\nu_2'),
    },
    source: 'satterthwaite-1946',
    note: 'A part taken from four runs has three; an instrument’s stated error counts as known, and its part leaves the sum below the line.',
  },
  {
    id: 'pooled-scatter',
    title: 'Scatter of one run, from all bikes together',
    result: 's',
    expression: 'sqrt((nu_1 * s_1^2 + nu_2 * s_2^2) / (nu_1 + nu_2))',
    symbols: {
      s: symbol('standard deviation of one run, relative to total power', '1', 's'),
      s_1: symbol('that of the first bike’s runs', '1', 's_1'),
      nu_1: symbol('number of the first bike’s runs, less one', '1', '\\nu_1'),
      s_2: symbol('that of the second bike’s runs', '1', 's_2'),
      nu_2: symbol('number of the second bike’s runs, less one', '1', '\\nu_2'),
    },
    source: 'definition',
    note: 'Relative to the power of rider and motor together, because wind, line and pacing cost a share of it.',
  },
  {
    id: 'half-width',
    title: 'Half of the 95 % range',
    result: 'U',
    expression: 't_95 * u_c',
    symbols: {
      U: symbol('half-width', 'W', 'U'),
      t_95: symbol('Student’s t for 97.5 % at the effective degrees of freedom', '1', 't_{95}'),
      u_c,
    },
    source: 'jcgm-100',
    note: 'With many degrees of freedom t is 1.96; with three it is 3.18.',
  },
  {
    id: 'half-width-among-all',
    title: 'The same when every pair is ranked',
    result: 'U',
    expression: 'q_95 * u_c / sqrt(2)',
    symbols: {
      U: symbol('half-width of a difference', 'W', 'U'),
      q_95: symbol(
        'studentized range for 95 %, the number of bikes and the effective degrees of freedom',
        '1',
        'q_{95}',
      ),
      u_c: symbol('combined standard uncertainty of the difference', 'W', 'u_\\mathrm{c}'),
    },
    source: 'tukey-1949',
    note: 'With two bikes it is the formula above.',
  },
  {
    id: 'difference-error',
    title: 'Doubt about a difference, from scatter alone',
    result: 'u_d',
    expression: 's * sqrt((P_1^2 + P_2^2) / n)',
    symbols: {
      u_d,
      s: symbol('standard deviation of one run, relative to total power', '1', 's'),
      P_1: symbol('total power on the first bike, rider and motor', 'W', 'P_1'),
      P_2: symbol('total power on the second bike', 'W', 'P_2'),
      n: symbol('runs on each bike', '1', 'n'),
    },
    source: 'definition',
    note: 'Four times the runs halve it. Tyres, drive and mass come on top, and no number of runs makes them smaller.',
  },
  {
    id: 'detectable-difference',
    title: 'Difference that a plan can show, roughly',
    result: 'delta',
    expression: '(t_alpha + t_beta) * u_d',
    symbols: {
      delta: symbol('true difference that is found as often as asked', 'W', '\\delta'),
      t_alpha: symbol('Student’s t for calling nothing a difference in 5 of 100 tests', '1', 't_\\alpha'),
      t_beta: symbol('Student’s t for finding the difference as often as asked', '1', 't_\\beta'),
      u_d,
    },
    source: 'nist-handbook',
    note: 'A shortcut, good from about six runs each. The plan itself works with the noncentral t at each whole number of runs.',
  },
  {
    id: 'time-at-target',
    title: 'Time at the target power, leaving out the air',
    result: 't_target',
    expression: 't * (P_rider + P_motor) / (P_target + P_motor) * m_target / m',
    symbols: {
      t_target: symbol('time at the target power', 's', 't_\\mathrm{target}'),
      t,
      P_rider: symbol('power of the rider in the run', 'W', 'P_\\mathrm{rider}'),
      P_motor,
      P_target: symbol('target power', 'W', 'P_\\mathrm{target}'),
      m_target: symbol('mass of the common rider with this bike', 'kg', 'm_\\mathrm{target}'),
      m: symbol('mass in the run', 'kg', 'm'),
    },
    source: 'definition',
    note: 'The model counts the air too. The motor stays as it was read back, or keeps its ratio to the rider where its support held it back.',
  },
  {
    id: 'proportional-time',
    title: 'Time carried by the ratio of heights',
    result: 't_target',
    expression: 't * H_target / H',
    symbols: {
      t_target: symbol('time on the other hill', 's', 't_\\mathrm{target}'),
      t,
      H_target: symbol('height of the other hill', 'm', 'H_\\mathrm{target}'),
      H,
    },
    source: 'common-practice',
  },
  {
    id: 'noise-gain',
    title: 'What noise adds to a sum of rises, on the level',
    result: 'H_noise',
    expression: 'N * s / sqrt(pi)',
    symbols: {
      H_noise: symbol('height that nobody climbed', 'm', 'H_\\mathrm{noise}'),
      N: symbol('steps from point to point', '1', 'N'),
      s: symbol('standard deviation of one height', 'm', 's'),
    },
    source: 'definition',
    note: 'Normal errors that have nothing to do with each other. Errors that go on from point to point add less, and a slope hides those that do not turn it round.',
  },
  {
    id: 'watts-per-kilogram',
    title: 'Power-to-weight',
    result: 'q',
    expression: 'P_rider / m_rider',
    symbols: {
      q: symbol('power-to-weight', 'W / kg', 'q'),
      P_rider,
      m_rider: symbol('body and kit', 'kg', 'm_\\mathrm{rider}'),
    },
    source: 'definition',
  },
  {
    id: 'standard-temperature',
    title: 'Temperature of the standard atmosphere',
    result: 'T_s',
    expression: 'T_0 - lambda * r_E * h / (r_E + h)',
    symbols: {
      T_s,
      T_0: symbol('at sea level, 288.15 K', 'K', 'T_0'),
      lambda: symbol('lapse rate, 0.0065 K/m', 'K / m', '\\lambda'),
      r_E: symbol('radius of the Earth, 6,356,766 m', 'm', 'r_\\mathrm{E}'),
      h: symbol('altitude (geometric)', 'm', 'h'),
    },
    source: 'iso-2533',
  },
  {
    id: 'standard-pressure',
    title: 'Pressure of the standard atmosphere',
    result: 'p',
    expression: 'p_0 * (T_s / T_0)^(g / (R_s * lambda))',
    symbols: {
      p,
      p_0: symbol('at sea level, 101,325 Pa', 'Pa', 'p_0'),
      T_s,
      T_0: symbol('at sea level, 288.15 K', 'K', 'T_0'),
      g,
      R_s: symbol('gas constant of dry air, 287.05287 J/(kg K)', 'J / (kg K)', 'R_\\mathrm{s}'),
      lambda: symbol('lapse rate, 0.0065 K/m', 'K / m', '\\lambda'),
    },
    source: 'iso-2533',
  },
  {
    id: 'saturation-pressure',
    title: 'Saturation pressure of water vapour',
    result: 'p_sv',
    expression: 'p_1 * exp(A * T^2 + B * T + C + D / T)',
    symbols: {
      p_sv,
      p_1: symbol('1 Pa', 'Pa', 'p_1'),
      A: symbol('1.2378847e-5 K⁻²', '1 / K^2', 'A'),
      B: symbol('−1.9121316e-2 K⁻¹', '1 / K', 'B'),
      C: symbol('33.93711047', '1', 'C'),
      D: symbol('−6.3431645e3 K', 'K', 'D'),
      T,
    },
    source: 'picard-2008',
  },
  {
    id: 'enhancement-factor',
    title: 'Enhancement factor',
    result: 'f_w',
    expression: 'alpha + beta * p + gamma * t^2',
    symbols: {
      f_w,
      alpha: symbol('1.00062', '1', '\\alpha'),
      beta: symbol('3.14e-8 Pa⁻¹', '1 / Pa', '\\beta'),
      gamma: symbol('5.6e-7 K⁻²', '1 / K^2', '\\gamma'),
      p,
      t: celsius,
    },
    source: 'picard-2008',
  },
  {
    id: 'vapour-fraction',
    title: 'Share of water vapour',
    result: 'x_v',
    expression: 'phi * f_w * p_sv / p',
    symbols: { x_v, phi: symbol('relative humidity (half is assumed)', '1', '\\varphi'), f_w, p_sv, p },
    source: 'picard-2008',
  },
  {
    id: 'compressibility',
    title: 'Compressibility of moist air',
    result: 'Z',
    expression:
      '1 - p / T * (a_0 + a_1 * t + a_2 * t^2 + (b_0 + b_1 * t) * x_v + (c_0 + c_1 * t) * x_v^2) + (p / T)^2 * (d + e_2 * x_v^2)',
    symbols: {
      Z,
      p,
      T,
      t: celsius,
      x_v,
      a_0: symbol('1.58123e-6 K/Pa', 'K / Pa', 'a_0'),
      a_1: symbol('−2.9331e-8 Pa⁻¹', '1 / Pa', 'a_1'),
      a_2: symbol('1.1043e-10 K⁻¹ Pa⁻¹', '1 / (K Pa)', 'a_2'),
      b_0: symbol('5.707e-6 K/Pa', 'K / Pa', 'b_0'),
      b_1: symbol('−2.051e-8 Pa⁻¹', '1 / Pa', 'b_1'),
      c_0: symbol('1.9898e-4 K/Pa', 'K / Pa', 'c_0'),
      c_1: symbol('−2.376e-6 Pa⁻¹', '1 / Pa', 'c_1'),
      d: symbol('1.83e-11 K²/Pa²', 'K^2 / Pa^2', 'd'),
      e_2: symbol('−0.765e-8 K²/Pa²', 'K^2 / Pa^2', 'e'),
    },
    source: 'picard-2008',
  },
  {
    id: 'moist-air-density',
    title: 'Density of moist air',
    result: 'rho',
    expression: 'p * M_a / (Z * R * T) * (1 - x_v * (1 - M_v / M_a))',
    symbols: {
      rho,
      p,
      M_a: symbol('molar mass of dry air, 28.96546e-3 kg/mol', 'kg / mol', 'M_\\mathrm{a}'),
      Z,
      R: symbol('molar gas constant, 8.314472 J/(mol K)', 'J / (mol K)', 'R'),
      T,
      x_v,
      M_v: symbol('molar mass of water, 18.01528e-3 kg/mol', 'kg / mol', 'M_\\mathrm{v}'),
    },
    source: 'picard-2008',
  },
];
