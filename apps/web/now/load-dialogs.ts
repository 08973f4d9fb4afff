/** What opens over the page of the day has scripts of its own, fetched before they are needed: the connection may be gone by then. */
export const loadWeighing = (): Promise<typeof import('./weigh/weigh-dialog.js')> =>
  import('./weigh/weigh-dialog.js');

export const loadMishaps = (): Promise<typeof import('./mishap-dialog.js')> => import('./mishap-dialog.js');
