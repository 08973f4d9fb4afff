import type { ServerResponse } from 'node:http';

/**
 * What a page may do: only what comes from here, nothing written into the page itself, and no frame around it
 * (Content Security Policy Level 3).
 */
const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

/** The bench keeps the screen awake while it counts down; it has no use for the rest (Permissions Policy). */
const permissions = [
  'screen-wake-lock=(self)',
  ...['accelerometer', 'browsing-topics', 'camera', 'display-capture', 'geolocation', 'gyroscope', 'hid'],
  ...['magnetometer', 'microphone', 'midi', 'payment', 'serial', 'usb', 'xr-spatial-tracking'],
]
  .map((feature) => (feature.includes('=') ? feature : `${feature}=()`))
  .join(', ');

/** Names of files in there hold a hash of what is in them, so a name never means anything else. */
const HASHED = /^assets[\\/]/;

/** @param path of the file that is sent, from the folder of the build, without the ending of a compressed copy */
export function setPageHeaders(response: ServerResponse, path: string): void {
  const kept = HASHED.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache';
  response.setHeader('Cache-Control', kept);
  response.setHeader('Content-Security-Policy', policy);
  response.setHeader('Permissions-Policy', permissions);
  response.setHeader('Referrer-Policy', 'no-referrer');
  response.setHeader('X-Content-Type-Options', 'nosniff');
}
