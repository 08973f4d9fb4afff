import type { Names } from '../names.js';
import { influences } from './influences.js';
import { materials } from './materials.js';
import { beyondRules, rules } from './rules.js';
import { states } from './states.js';

export const names: Names = {
  states,
  influences,
  rules,
  beyondRules,
  materials,
  englishMaterials: materials,
  // English stands in the tables of fats and rules.
  fatBehaviours: {},
  sources: {},
  inputs: {
    lyeConcentrationPercent: 'lye concentration',
    sodiumLactatePercent: 'sodium lactate',
    saltPercent: 'salt',
    sugarPercent: 'sugar',
    hardFattyAcidsPercent: 'hard fatty acids',
    oleicPercent: 'oleic acid',
    castorPercent: 'castor oil',
    buttersPercent: 'butters',
    olivePomacePercent: 'olive-pomace oil',
    batterTemperatureC: 'batter temperature',
    roomTemperatureC: 'room temperature',
    roomHumidityPercent: 'room humidity',
    mould: 'mould',
    fragrance: 'fragrance',
    gel: 'gel',
    mixing: 'mixing',
    process: 'process',
  },
  choices: {
    mould: {
      'silicone-cavity': 'silicone cavity',
      'lined-wood': 'lined wood',
      'lined-carton': 'lined carton',
      'rigid-plastic': 'rigid plastic',
    },
    fragrance: {
      none: 'none',
      slowing: 'slowing',
      mild: 'mild',
      brisk: 'brisk',
      strong: 'strong',
      seizing: 'seizing',
      ricing: 'ricing',
      unknown: 'not tried',
    },
    gel: { none: 'none', full: 'full' },
    mixing: {
      blender: 'blender',
      'to-emulsion': 'blender until it is an emulsion, then by hand',
      hand: 'by hand',
    },
    process: { cold: 'not cooked', cooked: 'cooked', rebatched: 'melted again' },
  },
  paces: {
    cooling: 'how lye and fats cool',
    keeping: 'how long lye keeps',
    batter: 'how the batter thickens',
    early: 'the first hours after the pour',
    set: 'how the soap sets',
    glaze: 'how the glaze sets',
    cure: 'how the soap cures',
  },
  stageKinds: {
    'make-lye': 'make the lye',
    'melt-fats': 'melt the fats',
    'melt-base': 'melt the base',
    mix: 'mix',
    split: 'split and colour',
    cook: 'cook',
    rebatch: 'melt it again',
    'press-decor': 'press the decor',
    pour: 'pour',
    layer: 'pour a layer',
    unmould: 'unmould',
    patch: 'patch',
    dip: 'dip',
    pipe: 'pipe',
    'set-in': 'set it in',
    sprinkle: 'sprinkle',
    mist: 'mist with alcohol',
    glaze: 'glaze',
    rest: 'let it rest',
    turn: 'turn',
    cut: 'cut',
    stamp: 'stamp',
    'zap-test': 'test it for lye',
    wrap: 'wrap',
    label: 'label',
  },
  evidence: ({ kind, source }) => {
    if (kind === 'common practice') return 'common practice, no source';
    if (kind === 'bench log') return 'your bench log';
    if (kind === 'published') return source ?? 'published';
    return source === undefined ? 'from memory' : `from memory of ${source}`;
  },
};
