/** Header that the service worker sets on an answer which is a copy: when that was made, ISO 8601. */
export const KEPT_AT = 'x-benchtide-kept-at';
