/** Patterns of pieces, and titles of what they make up. */
export const patterns = {
  title: 'How is it built?',
  lead: 'Choose what comes nearest. You can change everything afterwards.',
  names: {
    cast: 'Cast',
    layers: 'Cast in layers',
    loaf: 'Loaf in layers, then cut',
    swirl: 'Swirled loaf, then cut',
    coated: 'Cast and coated',
    piped: 'Cast and piped',
    halves: 'Two halves with a filling',
    decor: 'Cast with moulded decor',
    embeds: 'Cast with embeds inside',
  },
  steps: {
    cast: 'Pour, unmould.',
    layers: 'Pour one layer after the other, unmould.',
    loaf: 'Pour the layers into one mould, unmould, cut.',
    swirl: 'Split one batter into colours, pour them at once, unmould, cut.',
    coated: 'Pour, unmould, dip, turn.',
    piped: 'Pour, unmould, pipe onto it.',
    halves: 'Pour, unmould, pipe the filling, put the halves together.',
    decor: 'Press the decor, let it dry, pour, set it in, unmould.',
    embeds: 'Cast the embeds, unmould them, pour, set them in, unmould.',
  },
  layers: 'Layers',
  colours: 'Colours',
  joinHalves: 'Put the halves together',
  piecesFromLoaf: 'Pieces cut from one loaf',
  recipe: 'Recipe',
  mould: 'Mould',
  later: 'choose later',
  newRecipe: 'New recipe',
  newMould: 'New mould',
  take: 'Build it like this',
  add: 'Add to the piece',
  additions: {
    layer: 'a layer',
    filling: 'a filling',
    coat: 'a coat',
    piping: 'a piped topping',
    decor: 'decor',
    glaze: 'a glaze',
    cast: 'another cast part',
    embed: 'cast embeds',
  },
  roles: {
    base: 'Base',
    layer: 'Layer',
    coat: 'Coat',
    filling: 'Filling',
    piping: 'Topping',
    decor: 'Decor',
    glaze: 'Glaze',
    embed: 'Embeds',
  },
  /** What is done at a stage, with the title of its part; a kind that is not here is called by its name alone. */
  stageTitles: {
    'make-lye': (part: string) => `Make the lye for ${the(part)}`,
    'melt-fats': (part: string) => `Melt the fats for ${the(part)}`,
    'melt-base': (part: string) => `Melt the base for ${the(part)}`,
    mix: (part: string) => `Mix ${the(part)}`,
    'press-decor': (part: string) => `Press ${the(part)}`,
    pour: (part: string) => `Pour ${the(part)}`,
    layer: (part: string) => `Pour ${the(part)}`,
    dip: (part: string) => `Dip into ${the(part)}`,
    pipe: (part: string) => `Pipe ${the(part)}`,
    'set-in': (part: string) => `Set in ${the(part)}`,
    glaze: (part: string) => `Melt and apply ${the(part)}`,
  },
};

/** “the sand layer”, but “layer 2”; a title in capitals keeps them. */
function the(title: string): string {
  const plain = /^\p{Lu}(?!\p{Lu})/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title;
  return /\d$/.test(title) ? plain : `the ${plain}`;
}
