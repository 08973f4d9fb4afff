/** What all forms say. */
export const form = {
  /** 7 is seven, 1,000 could be one. */
  wrongTitle: (count: number) =>
    count === 1 ? 'One thing needs another look' : `${count} things need another look`,
  save: 'Save',
  saving: 'Saving …',
  saved: 'Saved.',
  discard: 'Discard changes',
  unsaved: 'Not saved yet; kept on this device until you do.',
  add: 'Add',
  remove: 'Remove',
  cancel: 'Cancel',
  staleTitle: 'It was changed elsewhere in the meantime',
  staleHow: 'Both versions are still here. Choose the one that is to count.',
  mine: 'Yours',
  theirs: 'As stored now',
  where: 'Where',
  keepMine: 'Keep mine',
  takeTheirs: 'Take what is stored',
  nothing: 'nothing',
  unit: 'unit',
  lengthUnits: { min: 'min', h: 'h', d: 'days' },
  up: (what: string) => `Move up: ${what}`,
  down: (what: string) => `Move down: ${what}`,
  yes: 'yes',
  no: 'no',
};
