/** Weekly hours, exceptions and quiet hours as intervals of instants. The only pure library that knows time zones. */
export { instantOf, isTimeZone, localDateOf, localText, localTimeOf } from './local-time.js';
export * from './open-intervals.js';
export * from './quiet-hours.js';
