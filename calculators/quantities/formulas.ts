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
      tau: symbol('torque at the crank', 'N m', '\\tau'),
      n: symbol('cadence, turns of the crank per time', '1 / s', 'n'),
    },
    source: 'definition',
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
      E_battery: symbol('nominal energy', 'J', 'E_\\mathrm{battery}'),
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
      E_battery: symbol('nominal energy', 'J', 'E_\\mathrm{battery}'),
    },
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
