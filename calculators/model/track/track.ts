/*
 * A recorded ride or a drawn route, as columns of equal length. SI; NaN where the file has no value: missing is not zero.
 * No position: what a reader does not need, nobody can pass on.
 */

/** Points of a recording in their order. */
export interface Track {
  /** m along the way from the first point, never falling; nothing is counted across a break */
  distance: Float64Array;
  /** m above sea level, as recorded */
  elevation: Float64Array;
  /** s from the first point that has a time; all NaN on a route */
  time: Float64Array;
  /** W at the crank or wherever the meter sits */
  power: Float64Array;
  /** rpm */
  cadence: Float64Array;
  /** beats per minute */
  heartRate: Float64Array;
  /** m by the device's own counter, from a wheel or from its own reckoning */
  counter: Float64Array;
  /** where the recording was interrupted, by rising index */
  breaks: readonly Break[];
}

/** An interruption just before a point: nothing is known of what lies between, and nothing is counted across it. */
export interface Break {
  /** the first point after it */
  index: number;
  /** the file begins a new stretch; the timer was stopped; or nothing was recorded for long */
  why: 'file' | 'timer' | 'silence';
  /** s between the points on either side, NaN without times */
  seconds: number;
  /** m as the crow flies between them, NaN where there is no position */
  apart: number;
}

/** Columns of a track that are measured, point by point. */
export const TRACK_COLUMNS = ['distance', 'elevation', 'time', 'power', 'cadence', 'heartRate', 'counter'] as const;
