import { materials as englishMaterials } from '../en/materials.js';
import type { Names } from '../names.js';
import { fatBehaviours } from './fat-behaviours.js';
import { influences } from './influences.js';
import { materials } from './materials.js';
import { beyondRules, rules } from './rules.js';
import { sources } from './sources.js';
import { states } from './states.js';

export const names: Names = {
  states,
  influences,
  rules,
  beyondRules,
  materials,
  englishMaterials,
  fatBehaviours,
  sources,
  inputs: {
    lyeConcentrationPercent: 'Laugenkonzentration',
    sodiumLactatePercent: 'Natriumlaktat',
    saltPercent: 'Salz',
    sugarPercent: 'Zucker',
    clayPercent: 'Tonerde',
    superfatPercent: 'Überfettung',
    kohSharePercent: 'Ätzkali',
    hardFattyAcidsPercent: 'harte Fettsäuren',
    oleicPercent: 'Ölsäure',
    polyunsaturatedPercent: 'Linolsäure',
    castorPercent: 'Rizinusöl',
    buttersPercent: 'Butter',
    olivePomacePercent: 'Oliventresteröl',
    lardPercent: 'Schmalz',
    freeAcidsPercent: 'freie Fettsäuren',
    waxPercent: 'Wachs',
    batterTemperatureC: 'Temperatur des Leims',
    roomTemperatureC: 'Raumtemperatur',
    roomHumidityPercent: 'Luftfeuchte',
    mould: 'Form',
    fragrance: 'Duft',
    mixing: 'Rühren',
    process: 'Verfahren',
    castMl: 'Mulde',
    pieceMl: 'Größe des Stücks',
    coatMm: 'Überzug',
    beadMm: 'Spritzlinie',
    meltMl: 'Gießseife',
    gel: 'Gelphase',
    gelPercent: 'Gelphase',
    hotHours: 'heiße Zeit',
  },
  choices: {
    mould: {
      'silicone-cavity': 'Silikonmulde',
      'lined-wood': 'ausgelegtes Holz',
      'lined-carton': 'ausgelegter Karton',
      'rigid-plastic': 'harter Kunststoff',
    },
    fragrance: {
      none: 'keiner',
      slowing: 'bremst',
      ricing: 'lässt klumpen',
      unknown: 'nicht erprobt',
      mild: 'dickt ein wenig an',
      brisk: 'dickt an',
      strong: 'dickt stark an',
      seizing: 'lässt den Leim stocken',
    },
    mixing: {
      blender: 'mit dem Stabmixer',
      'to-emulsion': 'mit dem Stabmixer bis zur Emulsion, dann von Hand',
      hand: 'von Hand',
    },
    process: { cold: 'nicht gekocht', cooked: 'gekocht', rebatched: 'noch einmal eingeschmolzen' },
  },
  paces: {
    cooling: 'wie Lauge und Fette abkühlen',
    keeping: 'wie lange Lauge sich hält',
    batter: 'wie der Leim andickt',
    early: 'die ersten Stunden nach dem Gießen',
    set: 'wie die Seife fest wird',
    glaze: 'wie der Guss fest wird',
    cure: 'wie die Seife reift',
  },
  stageKinds: {
    'make-lye': 'die Lauge anrühren',
    'melt-fats': 'die Fette schmelzen',
    'melt-base': 'die Seifenbasis schmelzen',
    mix: 'verrühren',
    split: 'aufteilen und färben',
    cook: 'kochen',
    rebatch: 'noch einmal einschmelzen',
    'press-decor': 'Dekor pressen',
    pour: 'gießen',
    layer: 'eine Schicht gießen',
    unmould: 'ausformen',
    patch: 'ausbessern',
    dip: 'tunken',
    pipe: 'spritzen',
    'set-in': 'einsetzen',
    sprinkle: 'bestreuen',
    mist: 'mit Alkohol besprühen',
    glaze: 'übergießen',
    rest: 'ruhen lassen',
    turn: 'wenden',
    cut: 'schneiden',
    stamp: 'stempeln',
    'zap-test': 'auf Lauge prüfen',
    wrap: 'einwickeln',
    label: 'etikettieren',
  },
  evidence: ({ kind, source }) => {
    if (kind === 'common practice') return 'übliche Praxis, ohne Quelle';
    if (kind === 'bench log') return 'Ihr Protokoll';
    if (kind === 'published') return source ?? 'veröffentlicht';
    return source === undefined ? 'aus dem Gedächtnis' : `aus dem Gedächtnis, nach: ${source}`;
  },
};
