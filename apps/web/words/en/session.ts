export const session = {
  title: 'Sign in',
  how: 'The window in which Benchtide was started shows a code and a link. Either will do; so will the key.',
  code: 'Code or key',
  enter: 'Sign in',
  wrong:
    'This code is not known, or it was used or is too old. Start Benchtide again for a new one, or use the key.',
  tooMany: 'Too many tries. Wait a minute.',
  device: 'Name of this device',
  devices: { phone: 'Phone', tablet: 'Tablet', computer: 'Computer' },
};
