import { compile } from 'mathjs';
import * as model from '../../calculators/model/index.ts';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { formulas } from '../../calculators/quantities/formulas.ts';
import { resultOf } from '../../calculators/scenario/vocabulary.ts';
import { anyAscent, PLAIN } from '../model/climbs.ts';
import type { Random } from '../random.ts';

const g = model.GRAVITY;
const compiled = new Map(formulas.map(({ id, expression }) => [id, compile(expression)]));

/** A formula with plain SI numbers for its symbols. */
function value(id: string, scope: Record<string, number>): number {
  const formula = compiled.get(id);
  if (!formula) throw new Error(`There is no formula “${id}”.`);
  return formula.evaluate({ ...scope }) as number;
}

/** A climb, its ride, and the symbols that stand for them. */
function ridden(r: Random) {
  const climb = anyAscent(r);
  const ride = model.rideClimb(climb);
  const { hill, mass: m } = climb;
  return { climb, ride, v: ride.speed, symbols: { m, g, H: hill.gain, L: hill.distance, v: ride.speed } };
}

/** The whole chain of CIPM-2007 with the constants that the symbol tables name. */
function moistAir(r: Random): [number, number] {
  const p = r.between(60_000, 105_000);
  const t = r.between(-10, 40);
  const phi = r.between(0, 1);
  const T = t + 273.15;
  const p_sv = value('saturation-pressure', {
    p_1: 1,
    A: 1.2378847e-5,
    B: -1.9121316e-2,
    C: 33.93711047,
    D: -6.3431645e3,
    T,
  });
  const f_w = value('enhancement-factor', { alpha: 1.00062, beta: 3.14e-8, gamma: 5.6e-7, p, t });
  const x_v = value('vapour-fraction', { phi, f_w, p_sv, p });
  const Z = value('compressibility', {
    p,
    T,
    t,
    x_v,
    a_0: 1.58123e-6,
    a_1: -2.9331e-8,
    a_2: 1.1043e-10,
    b_0: 5.707e-6,
    b_1: -2.051e-8,
    c_0: 1.9898e-4,
    c_1: -2.376e-6,
    d: 1.83e-11,
    e_2: -0.765e-8,
  });
  const density = value('moist-air-density', { p, M_a: 28.96546e-3, Z, R: 8.314472, T, x_v, M_v: 18.01528e-3 });
  return [density, model.moistAirDensity(p, t, phi)];
}

/** A gear, and the symbols that stand for it. */
function anyGear(r: Random) {
  const gear = { wheelRadius: r.between(0.25, 0.38), turns: r.between(0.5, 3) };
  return { gear, symbols: { r_wheel: gear.wheelRadius, i_gear: gear.turns } };
}

/** A motor that warms up, and the symbols that stand for it. */
function anyHeat(r: Random) {
  const heat: model.Heat = {
    continuous: r.between(100, 500),
    continuousCadence: r.between(50, 90),
    timeConstant: r.between(300, 6000),
    fixedLosses: r.between(0, 3),
    rise: r.between(0, 0.8),
  };
  return { heat, symbols: { tau_warm: heat.timeConstant, theta_0: heat.rise } };
}

/** Two bikes of a plan in which nothing is fixed. */
function anyPair(r: Random) {
  const perShare = Array.from({ length: r.whole(2, 6) }, () => r.between(300, 900));
  const [repeats, controls] = [r.whole(2, 6), r.whole(0, 4)];
  const plan = { perShare, scatter: r.between(0.005, 0.03), fixed: 0, controls, amongAll: false };
  return { plan, repeats, precision: model.pairPrecision(plan, 0, 1, repeats) };
}

/** Nothing is in doubt. */
const EXACT = { doubts: { meter: 0, mass: 0, gain: 0, drift: 0, distance: 0, drive: 0, density: 0, wind: 0, drag: 0 } };

/** A steady ride up an even slope, recorded point by point, at a power that is enough for a surface of a C_rr between 0.005 and 0.08. */
function recordedAscent(r: Random) {
  const hill = model.hillFromGrade(r.between(350, 800), r.between(0.02, 0.15));
  const climb = { ...anyAscent(r), hill, rolling: r.between(0.005, 0.08), headWind: r.between(0, 2), motorPower: 0 };
  const speed = r.between(2, 5);
  climb.riderPower = model.crankPower(model.resistanceOf(model.loadOf(climb)), speed, climb.efficiency);
  const points = r.whole(60, 120);
  const along = Float64Array.from({ length: points + 1 }, (_, i) => (hill.distance * i) / points);
  const height = along.map((distance) => distance * hill.sin);
  const blank = along.map(() => Number.NaN);
  const track: model.Track = {
    distance: along,
    elevation: height,
    time: along.map((distance) => distance / speed),
    power: along.map(() => climb.riderPower),
    cadence: blank,
    heartRate: blank,
    counter: blank,
    breaks: [],
  };
  return { climb, track, height, rise: hill.gain };
}

/** By id: the formula's value and that of the code which the site runs, for one random input. */
export const counterparts: Record<string, (r: Random) => [number, number]> = {
  'slope-sine': (r) => {
    const { hill } = anyAscent(r);
    return [value('slope-sine', { H: hill.gain, L: hill.distance }), hill.sin];
  },
  grade: (r) => {
    const { hill } = anyAscent(r);
    return [value('grade', { H: hill.gain, L: hill.distance }), model.hillFromGain(hill.distance, hill.gain).grade];
  },
  'vertical-speed': (r) => {
    const { ride, symbols } = ridden(r);
    return [value('vertical-speed', symbols), ride.verticalSpeed];
  },
  'gravity-force': (r) => {
    const { climb, v, symbols } = ridden(r);
    return [value('gravity-force', symbols), model.forces(model.loadOf(climb), v).gravity];
  },
  'rolling-force': (r) => {
    const { climb, v, symbols } = ridden(r);
    const load = { ...model.loadOf(climb), bearings: false };
    return [value('rolling-force', { ...symbols, C_rr: climb.rolling }), model.forces(load, v).rolling];
  },
  'air-force': (r) => {
    const { climb, v } = ridden(r);
    const scope = { rho: climb.density, C_dA: climb.dragArea, v, w: climb.headWind };
    return [value('air-force', scope), model.forces(model.loadOf(climb), v).air];
  },
  'bearings-force': (r) => {
    const { climb, v } = ridden(r);
    const weightless = { ...model.loadOf(climb), mass: 0 };
    const scope = { F_0: model.BEARINGS_CONSTANT, k_b: model.BEARINGS_PER_SPEED, v };
    return [value('bearings-force', scope), model.forces(weightless, v).rolling];
  },
  'crank-power': (r) => {
    const { climb, v, symbols } = ridden(r);
    const still = { ...climb, headWind: Math.abs(climb.headWind) };
    const F_bearings = value('bearings-force', { F_0: 0.091, k_b: 0.0087, v });
    const scope = {
      v,
      F_gravity: value('gravity-force', symbols),
      F_rolling: value('rolling-force', { ...symbols, C_rr: still.rolling }),
      F_air: value('air-force', { rho: still.density, C_dA: still.dragArea, v, w: still.headWind }),
      F_bearings,
      eta: still.efficiency,
    };
    return [
      value('crank-power', scope),
      model.crankPower(model.resistanceOf(model.loadOf(still)), v, still.efficiency),
    ];
  },
  acceleration: (r) => {
    // the power that the model asks for where one more force holds against it: mass times acceleration
    const { climb, v, symbols } = ridden(r);
    const still = { ...climb, headWind: Math.abs(climb.headWind) };
    const a = r.between(0.1, 1);
    const resistance = model.resistanceOf(model.loadOf(still));
    const pushed = { ...resistance, constant: resistance.constant + still.mass * a };
    const scope = {
      eta: still.efficiency,
      P_crank: model.crankPower(pushed, v, still.efficiency),
      v,
      F_gravity: value('gravity-force', symbols),
      F_rolling: value('rolling-force', { ...symbols, C_rr: still.rolling }),
      F_air: value('air-force', { rho: still.density, C_dA: still.dragArea, v, w: still.headWind }),
      F_bearings: value('bearings-force', { F_0: 0.091, k_b: 0.0087, v }),
      m: still.mass,
    };
    return [value('acceleration', scope), a];
  },
  'kinetic-energy': (r) => {
    const climb = anyAscent(r);
    const { points, kinetic } = model.rideProfile(climb, {});
    return [value('kinetic-energy', { m: climb.mass, v: points.speed[0] ?? Number.NaN }), kinetic.start];
  },
  'climb-time': (r) => {
    const { ride, symbols } = ridden(r);
    return [value('climb-time', symbols), ride.time];
  },
  'assist-fade': (r) => {
    const limit = r.between(3, 15);
    const v = limit + r.between(-1, 0.2);
    const P_motor = r.between(50, 900);
    const scope = { P_motor, v, v_limit: limit, v_fade: model.FADE_WIDTH };
    return [value('assist-fade', scope), P_motor * model.assistShare(v, limit)];
  },
  'torque-power': (r) => {
    const [tau, rpm] = [r.between(10, 120), r.between(30, 120)];
    return [value('torque-power', { tau, n: rpm / 60 }), model.torquePower(tau, rpm)];
  },
  'motor-output': (r) => {
    const [P_peak, s, P_rider] = [r.between(100, 900), r.between(0.5, 5), r.between(50, 300)];
    const [tau, cadence] = [r.between(20, 120), r.between(30, 120)];
    const drive = { motorPower: P_peak, support: s, riderPower: P_rider, torque: tau, cadence };
    return [
      value('motor-output', { P_peak, s, P_rider, n: cadence / 60, tau }),
      model.motorBound({ ...drive, efficiency: 1, assistLimit: null }).power,
    ];
  },
  'torque-cadence': (r) => {
    const [P, tau] = [r.between(100, 900), r.between(20, 120)];
    return [value('torque-cadence', { P, tau }), model.torqueCadence(P, tau) / 60];
  },
  'gear-cadence': (r) => {
    const { gear, symbols } = anyGear(r);
    const [v, rpm] = [r.between(0.3, 4), r.between(40, 100)];
    return [value('gear-cadence', { ...symbols, v, n_rider: rpm / 60 }), model.cadenceAt(v, gear, rpm) / 60];
  },
  'wheel-force': (r) => {
    const { gear, symbols } = anyGear(r);
    const tau = r.between(10, 200);
    return [value('wheel-force', { ...symbols, tau }), model.wheelForce(tau, gear)];
  },
  'pedal-torque': (r) => {
    const [F_pedal, l_crank] = [r.between(100, 900), r.between(0.14, 0.18)];
    return [value('pedal-torque', { F_pedal, l_crank }), model.pedalTorque(F_pedal, l_crank)];
  },
  'holding-force': (r) => {
    const [m, G, C_rr] = [r.between(50, 200), r.between(-0.2, 0.6), r.between(0.005, 0.1)];
    return [value('holding-force', { m, g, G, C_rr }), model.holdingForce(m, G, C_rr)];
  },
  'steepest-grade': (r) => {
    // steep enough that the difference of two angles keeps its digits, flat enough that the sine does
    const [m, C_rr] = [r.between(50, 200), r.between(0.005, 0.1)];
    const F_wheel = r.between(0.15, 0.9) * m * g;
    return [value('steepest-grade', { F_wheel, m, g, C_rr }), model.steepestGrade(F_wheel, m, C_rr) ?? Number.NaN];
  },
  'torque-ratio': (r) => {
    const { heat } = anyHeat(r);
    const [P_motor, cadence] = [r.between(100, 900), r.between(40, 100)];
    const scope = { P_lasting: heat.continuous, n_lasting: heat.continuousCadence / 60 };
    return [value('torque-ratio', { ...scope, P_motor, n: cadence / 60 }), model.torqueRatio(P_motor, cadence, heat)];
  },
  'final-rise': (r) => {
    const [k, alpha] = [r.between(0, 4), r.between(0, 3)];
    return [value('final-rise', { k, alpha }), model.finalRise(k, alpha)];
  },
  'rise-after': (r) => {
    const { heat, symbols } = anyHeat(r);
    const [k, t] = [r.between(0, 4), r.between(10, 3000)];
    const K = value('final-rise', { k, alpha: heat.fixedLosses });
    return [value('rise-after', { ...symbols, K, t }), model.riseAfter(k, t, heat)];
  },
  'hold-time': (r) => {
    const { heat, symbols } = anyHeat(r);
    const k = r.between(1.05, 4);
    const K = value('final-rise', { k, alpha: heat.fixedLosses });
    return [value('hold-time', { ...symbols, K }), model.holdTime(k, heat)];
  },
  'short-time-overload': (r) => {
    const [t, tau_warm, alpha] = [r.between(300, 3000), r.between(300, 6000), r.between(0, 3)];
    return [value('short-time-overload', { t, tau_warm, alpha }), model.shortTimeOverload(t, tau_warm, alpha)];
  },
  'intermittent-overload': (r) => {
    const [t_on, t_off, alpha] = [r.between(300, 1500), r.between(60, 3000), r.between(0, 3)];
    const [tau_warm, tau_cool] = [r.between(300, 3000), r.between(300, 6000)];
    return [
      value('intermittent-overload', { t_on, t_off, tau_warm, tau_cool, alpha }),
      model.intermittentOverload(t_on, t_off, tau_warm, tau_cool, alpha),
    ];
  },
  'endurance-time': (r) => {
    const [P_critical, W_above] = [r.between(100, 350), r.between(5000, 40_000)];
    const P_rider = P_critical + r.between(5, 200);
    const rider = { criticalPower: P_critical, workAbove: W_above };
    return [value('endurance-time', { W_above, P_rider, P_critical }), model.enduranceTime(P_rider, rider)];
  },
  'work-recovered': (r) => {
    const [P_critical, W_above] = [r.between(150, 350), r.between(8000, 40_000)];
    const [W_before, P_rest, t] = [r.between(0.2, 0.9) * W_above, r.between(0, 100), r.between(10, 200)];
    const effort = { power: P_critical + W_before / 100, time: 100 };
    const { after } = model.workBalance([effort, { power: P_rest, time: t }], {
      criticalPower: P_critical,
      workAbove: W_above,
    });
    return [value('work-recovered', { W_before, P_critical, P_rest, t, W_above }), W_above - (after[1] ?? Number.NaN)];
  },
  // nothing on the site computes with these two: the same by another way of thinking
  'start-test-power': (r) => {
    const [m, D, t] = [r.between(60, 180), r.between(10, 40), r.between(3, 12)];
    const endSpeed = (2 * D) / t;
    return [value('start-test-power', { m, D, t }), (0.5 * m * endSpeed ** 2) / t];
  },
  'nominal-energy': (r) => {
    const [U, ampereHours] = [r.between(24, 52), r.between(5, 25)];
    return [value('nominal-energy', { U, Q: ampereHours * 3600 }), U * ampereHours * 3600];
  },
  'lift-energy': (r) => {
    const { ride, symbols } = ridden(r);
    return [value('lift-energy', symbols), ride.powers.gravity * ride.time];
  },
  'battery-energy': (r) => {
    const [P_given, t, eta_unit] = [r.between(50, 900), r.between(60, 6000), r.between(0.6, 0.9)];
    return [value('battery-energy', { P_given, t, eta_unit }), model.batteryEnergy(P_given, t, eta_unit)];
  },
  'usable-energy': (r) => {
    const E_battery = r.between(200, 1500) * 3600;
    const [health, cold, reserve] = [r.between(0.5, 1), r.between(0.5, 1), r.between(0, 0.4)];
    return [
      value('usable-energy', { E_battery, k_health: health, k_cold: cold, k_reserve: reserve }),
      model.usableEnergy(E_battery, { health, cold, reserve }),
    ];
  },
  'drawn-power': (r) => {
    const [P_given, eta_unit, P_idle] = [r.between(50, 900), r.between(0.6, 0.9), r.between(0, 20)];
    return [value('drawn-power', { P_given, eta_unit, P_idle }), model.drawnPower(P_given, eta_unit, P_idle)];
  },
  'gauge-energy': (r) => {
    const [E_full, s_start, s_end] = [r.between(200, 1500) * 3600, r.between(0.6, 1), r.between(0, 0.5)];
    return [value('gauge-energy', { E_full, s_start, s_end }), model.gaugeEnergy(E_full, s_start, s_end, 0.01).value];
  },
  'implied-efficiency': (r) => {
    const [P_given, t] = [r.between(50, 900), r.between(60, 6000)];
    const E_gauge = r.between(1.1, 2) * P_given * t;
    const gauge = { value: E_gauge, low: E_gauge, high: E_gauge };
    return [value('implied-efficiency', { P_given, t, E_gauge }), model.impliedEfficiency(P_given * t, gauge).value];
  },
  'battery-share': (r) => {
    const wattHours = r.whole(200, 900);
    const outcome = outcomeOf('climb-time', `gain=${r.whole(50, 400)}&battery=${wattHours}`);
    const E = resultOf(outcome, 'battery-energy').si ?? 0;
    return [value('battery-share', { E, E_battery: wattHours * 3600 }), resultOf(outcome, 'battery-share').si ?? 0];
  },
  'control-rolling': (r) => {
    const hill = model.hillFromGrade(r.between(500, 5000), r.between(0.005, 0.03));
    const run = { time: hill.distance / r.between(2, 3), riderPower: r.between(250, 400), mass: r.between(60, 120) };
    const setting = { hill, density: 1.15, headWind: r.between(0, 2), efficiency: r.between(0.9, 1), dragArea: 0.45 };
    const v = hill.distance / run.time;
    const scope = {
      eta: setting.efficiency,
      P_control: run.riderPower,
      v,
      m: run.mass,
      g,
      H: hill.gain,
      L: hill.distance,
      F_air: value('air-force', { rho: 1.15, C_dA: 0.45, v, w: setting.headWind }),
      F_bearings: value('bearings-force', { F_0: 0.091, k_b: 0.0087, v }),
    };
    const fitted = model.calibrate([run], { ...setting, dragAreaUncertainty: 0.051, powerRepeatability: 0.012 });
    return [value('control-rolling', scope), fitted.rolling];
  },
  'ride-rolling': (r) => {
    const { climb, track, height, rise } = recordedAscent(r);
    const { mass: m, efficiency: eta, density, headWind, dragArea } = climb;
    const { doubts } = EXACT;
    const found = model.calibrateRide(track, height, 0, height.length - 1, {
      mass: m,
      efficiency: eta,
      density,
      headWind,
      dragArea,
      doubts,
    });
    const [L, T] = [track.distance.at(-1) ?? 0, track.time.at(-1) ?? 0];
    const v = L / T;
    const scope = {
      eta,
      E_rider: climb.riderPower * T,
      m,
      g,
      H: rise,
      E_air: L * value('air-force', { rho: density, C_dA: dragArea, v, w: headWind }),
      E_bearings: L * value('bearings-force', { F_0: 0.091, k_b: 0.0087, v }),
      E_faster: 0,
      L_level: Math.sqrt(L ** 2 - rise ** 2),
    };
    return [value('ride-rolling', scope), 'used' in found ? found.rolling.value : Number.NaN];
  },
  'motor-from-time': (r) => {
    const { climb, ride } = ridden(r);
    const still = { ...climb, headWind: 0 };
    const scope = { P_crank: model.crankPowerForTime(still, ride.time), P_rider: still.riderPower };
    return [value('motor-from-time', scope), model.inferMotor(still, ride.time).mean];
  },
  'motor-by-ratio': (r) => {
    // what the model says once air and bearings are left out: the force at the wheel is proportional to mass
    const { hill, efficiency } = anyAscent(r);
    const [m_control, m_assisted] = [r.between(70, 100), r.between(80, 120)];
    const [P_control, P_rider] = [r.between(150, 300), r.between(100, 200)];
    const t_control = r.between(800, 1200);
    const t_assisted = t_control / r.between(2, 3);
    const perKilogram = (efficiency * P_control * t_control) / (hill.distance * m_control);
    const rolling = (perKilogram / g - hill.sin) / hill.cos;
    const load = { ...model.loadOf(PLAIN), sin: hill.sin, cos: hill.cos, mass: m_assisted, rolling, dragArea: 0 };
    const resistance = model.resistanceOf({ ...load, bearings: false });
    const crank = model.crankPower(resistance, hill.distance / t_assisted, efficiency);
    return [
      value('motor-by-ratio', { P_control, t_control, t_assisted, m_assisted, m_control, P_rider }),
      crank - P_rider,
    ];
  },
  'time-at-target': (r) => {
    // without air and bearings speed goes with the power over the mass
    const { hill, rolling, efficiency } = anyAscent(r);
    const [P_rider, P_motor, P_target] = [r.between(100, 300), r.between(100, 700), r.between(100, 300)];
    const [m, m_target] = [r.between(80, 120), r.between(80, 120)];
    const ride = { hill, rolling, efficiency, dragArea: 0, density: 0, headWind: 0 };
    const timeOf = (mass: number, power: number): number => {
      const resistance = model.resistanceOf({ ...model.loadOf({ ...PLAIN, ...ride, mass }), bearings: false });
      return hill.distance / model.steadySpeed(resistance, power * efficiency);
    };
    const t = timeOf(m, P_rider + P_motor);
    return [
      value('time-at-target', { t, P_rider, P_motor, P_target, m_target, m }),
      timeOf(m_target, P_target + P_motor),
    ];
  },
  'combined-uncertainty': (r) => {
    const [u_1, u_2, correlation] = [r.between(1, 30), r.between(1, 30), r.between(-0.9, 0.9)];
    const shifts = [u_1, u_2];
    return [
      value('combined-uncertainty', { u_1, u_2, r: correlation }),
      Math.sqrt(model.covariance(shifts, shifts, () => correlation)),
    ];
  },
  'effective-freedom': (r) => {
    const [u_1, u_2, nu_1, nu_2] = [r.between(1, 30), r.between(1, 30), r.between(1, 20), r.between(1, 20)];
    const parts = [
      { standard: u_1, freedom: nu_1 },
      { standard: u_2, freedom: nu_2 },
    ];
    return [
      value('effective-freedom', { u_c: Math.hypot(u_1, u_2), u_1, u_2, nu_1, nu_2 }),
      model.effectiveFreedom(parts),
    ];
  },
  'half-width': (r) => {
    const [u_c, freedom] = [r.between(1, 30), r.between(1, 50)];
    return [
      value('half-width', { t_95: model.tQuantile(0.975, freedom), u_c }),
      model.expandedUncertainty(u_c, freedom),
    ];
  },
  'half-width-among-all': (r) => {
    // of two values the studentized range is √2 times Student’s t
    const [u_c, freedom] = [r.between(1, 30), r.between(1, 50)];
    const q_95 = Math.SQRT2 * model.tQuantile(0.975, freedom);
    return [value('half-width-among-all', { q_95, u_c }), model.expandedUncertainty(u_c, freedom)];
  },
  'pooled-scatter': (r) => {
    const runs = (count: number): number[] => Array.from({ length: count }, () => r.between(0.9, 1.1));
    const [first, second] = [runs(3), runs(5)];
    const [s_1, s_2] = [model.standardDeviation(first), model.standardDeviation(second)];
    return [
      value('pooled-scatter', { s_1, s_2, nu_1: 2, nu_2: 4 }),
      model.oneWayAnova([first, second]).residualDeviation,
    ];
  },
  'difference-error': (r) => {
    const { plan, repeats, precision } = anyPair(r);
    const [P_1 = 0, P_2 = 0] = plan.perShare;
    return [value('difference-error', { s: plan.scatter, P_1, P_2, n: repeats }), precision.standardError];
  },
  // the plan computes exactly and not with this shortcut: the same as how far the threshold lies above nothing and below the difference
  'detectable-difference': (r) => {
    const [u_d, freedom] = [r.between(1, 30), r.between(5, 50)];
    const [threshold, below] = [model.expandedUncertainty(u_d, freedom), model.expandedUncertainty(u_d, freedom, 0.6)];
    const [t_alpha, t_beta] = [model.tQuantile(0.975, freedom), model.tQuantile(0.8, freedom)];
    return [value('detectable-difference', { t_alpha, t_beta, u_d }), threshold + below];
  },
  // nothing on the site computes with this one: the mean of the rises that a normal step of √2 s makes, half of them none
  'noise-gain': (r) => {
    const [N, s] = [r.whole(10, 5000), r.between(0.1, 5)];
    const step = Math.SQRT2 * s;
    return [value('noise-gain', { N, s }), N * 0.5 * step * Math.sqrt(2 / Math.PI)];
  },
  'proportional-time': (r) => {
    const [t, H, H_target] = [r.between(100, 2000), r.between(50, 500), r.between(100, 2000)];
    return [value('proportional-time', { t, H, H_target }), model.proportionalTime(t, H, H_target)];
  },
  'watts-per-kilogram': (r) => {
    const climb = anyAscent(r);
    const m_rider = r.between(45, 110);
    return [
      value('watts-per-kilogram', { P_rider: climb.riderPower, m_rider }),
      model.powerToWeight(climb, m_rider).rider,
    ];
  },
  'standard-temperature': (r) => {
    const h = r.between(-400, 6000);
    const scope = { T_0: 288.15, lambda: 0.0065, r_E: 6_356_766, h };
    return [value('standard-temperature', scope), model.standardAtmosphere(h).temperature];
  },
  'standard-pressure': (r) => {
    const { temperature: T_s, pressure } = model.standardAtmosphere(r.between(-400, 6000));
    return [
      value('standard-pressure', { p_0: 101_325, T_s, T_0: 288.15, g, R_s: 287.05287, lambda: 0.0065 }),
      pressure,
    ];
  },
  'saturation-pressure': moistAir,
  'enhancement-factor': moistAir,
  'vapour-fraction': moistAir,
  compressibility: moistAir,
  'moist-air-density': moistAir,
};
