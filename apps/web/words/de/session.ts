import type { Words } from '../en/index.js';

export const session: Words['session'] = {
  title: 'Anmelden',
  how: 'Das Fenster, in dem Benchtide gestartet wurde, zeigt einen Code und einen Link. Beides geht; der Schlüssel auch.',
  code: 'Code oder Schlüssel',
  enter: 'Anmelden',
  wrong:
    'Dieser Code ist unbekannt, verbraucht oder zu alt. Starten Sie Benchtide neu oder nehmen Sie den Schlüssel.',
  tooMany: 'Zu viele Versuche. Warten Sie eine Minute.',
  device: 'Name dieses Geräts',
  devices: { phone: 'Handy', tablet: 'Tablet', computer: 'Computer' },
};
