import type { Evidence } from '#units';
import { inciDictionary, inciPattern } from './sources.js';

/** INCI names of the sodium soap of a fat, by the fat's key, as remembered from the INCI dictionary. */
const listed: Readonly<Record<string, string>> = {
  ...{ coconut: 'Sodium Cocoate', 'hydrogenated-coconut': 'Sodium Hydrogenated Cocoate' },
  ...{ babassu: 'Sodium Babassuate', 'murumuru-butter': 'Sodium Astrocaryum Murumuruate' },
  ...{ 'palm-kernel': 'Sodium Palm Kernelate', 'palm-kernel-olein': 'Sodium Palm Kernelate' },
  ...{ 'palm-kernel-stearin': 'Sodium Palm Kernelate', palm: 'Sodium Palmate' },
  ...{
    'palm-olein': 'Sodium Palmate',
    'palm-stearin': 'Sodium Palmate',
    'palm-superolein': 'Sodium Palmate',
  },
  ...{ 'palm-shortening': 'Sodium Palmate', 'high-oleic-palm': 'Sodium Palmate' },
  'hydrogenated-palm': 'Sodium Hydrogenated Palmate',
  ...{ olive: 'Sodium Olivate', 'olive-pomace': 'Sodium Olivate' },
  ...{ 'sweet-almond': 'Sodium Sweetalmondate', macadamia: 'Sodium Macadamiaseedate' },
  ...{ avocado: 'Sodium Avocadoate', argan: 'Sodium Arganate', peanut: 'Sodium Peanutate' },
  ...{ sunflower: 'Sodium Sunflowerseedate', 'high-oleic-sunflower': 'Sodium Sunflowerseedate' },
  'mid-oleic-sunflower': 'Sodium Sunflowerseedate',
  ...{ safflower: 'Sodium Safflowerate', 'high-oleic-safflower': 'Sodium Safflowerate' },
  ...{ rapeseed: 'Sodium Canolate', 'high-oleic-rapeseed': 'Sodium Canolate' },
  ...{ soybean: 'Sodium Soyate', 'high-oleic-soybean': 'Sodium Soyate', sesame: 'Sodium Sesameseedate' },
  ...{ cottonseed: 'Sodium Cottonseedate', 'grape-seed': 'Sodium Grapeseedate' },
  ...{ 'hemp-seed': 'Sodium Hempseedate', 'pumpkin-seed': 'Sodium Pumpkinseedate' },
  ...{ 'shea-butter': 'Sodium Shea Butterate', 'shea-butter-refined': 'Sodium Shea Butterate' },
  ...{ 'cocoa-butter': 'Sodium Cocoa Butterate', 'mango-butter': 'Sodium Mangoseedate' },
  'cupuacu-butter': 'Sodium Theobroma Grandiflorum Seedate',
  ...{ lard: 'Sodium Lardate', tallow: 'Sodium Tallowate', 'sheep-tallow': 'Sodium Tallowate' },
  ...{ castor: 'Sodium Castorate', tamanu: 'Sodium Tamanuseedate' },
  ...{ 'stearic-acid': 'Sodium Stearate', 'stearic-acid-95': 'Sodium Stearate' },
  ...{ 'palmitic-acid': 'Sodium Palmitate', 'myristic-acid': 'Sodium Myristate' },
  ...{ 'lauric-acid': 'Sodium Laurate', 'oleic-acid': 'Sodium Oleate', rosin: 'Sodium Rosinate' },
};

/** Formed as the dictionary forms such names; whether it lists them was not remembered. */
const byPattern: Readonly<Record<string, string>> = {
  ...{ 'tucuma-butter': 'Sodium Tucuma Butterate', 'ucuuba-butter': 'Sodium Ucuuba Butterate' },
  ...{ 'laurel-berry': 'Sodium Laurelate', 'medium-chain-triglycerides': 'Sodium Caprylate/Caprate' },
  ...{ 'hydrogenated-soybean': 'Sodium Hydrogenated Soyate', 'soy-wax': 'Sodium Hydrogenated Soyate' },
  'hydrogenated-rapeseed': 'Sodium Hydrogenated Rapeseedate',
  ...{ 'apricot-kernel': 'Sodium Apricot Kernelate', 'peach-kernel': 'Sodium Peach Kernelate' },
  ...{ 'plum-kernel': 'Sodium Plum Kernelate', 'cherry-kernel': 'Sodium Cherry Kernelate' },
  ...{ hazelnut: 'Sodium Hazelnutate', walnut: 'Sodium Walnutate', pecan: 'Sodium Pecanate' },
  ...{
    pistachio: 'Sodium Pistachioate',
    'brazil-nut': 'Sodium Brazilnutate',
    'kukui-nut': 'Sodium Kukuiate',
  },
  ...{ camellia: 'Sodium Camelliaseedate', 'mustard-seed': 'Sodium Mustardseedate' },
  ...{ moringa: 'Sodium Moringaseedate', marula: 'Sodium Marulaseedate', buriti: 'Sodium Buritiate' },
  ...{ acai: 'Sodium Acaiate', andiroba: 'Sodium Andirobaseedate', karanja: 'Sodium Karanjaseedate' },
  ...{ meadowfoam: 'Sodium Meadowfoamseedate', 'rice-bran': 'Sodium Ricebranate', maize: 'Sodium Cornate' },
  ...{ 'wheat-germ': 'Sodium Wheatgermate', 'black-cumin': 'Sodium Blackcuminate' },
  ...{ 'poppy-seed': 'Sodium Poppyseedate', 'passion-fruit-seed': 'Sodium Passionfruitseedate' },
  ...{ 'watermelon-seed': 'Sodium Watermelonseedate', 'milk-thistle': 'Sodium Milkthistleseedate' },
  ...{ baobab: 'Sodium Baobabseedate', linseed: 'Sodium Linseedate', camelina: 'Sodium Camelinaseedate' },
  ...{ 'evening-primrose': 'Sodium Eveningprimroseate', borage: 'Sodium Borageseedate' },
  ...{ 'blackcurrant-seed': 'Sodium Blackcurrantseedate', 'rosehip-seed': 'Sodium Rosehipseedate' },
  ...{ 'raspberry-seed': 'Sodium Raspberryseedate', 'chia-seed': 'Sodium Chiaseedate' },
  ...{
    perilla: 'Sodium Perillaseedate',
    'sea-buckthorn': 'Sodium Seabuckthornate',
    neem: 'Sodium Neemseedate',
  },
  ...{ 'kokum-butter': 'Sodium Kokum Butterate', 'illipe-butter': 'Sodium Illipe Butterate' },
  ...{ 'sal-butter': 'Sodium Sal Butterate', 'shea-olein': 'Sodium Sheaoleate' },
  ...{ 'mowrah-butter': 'Sodium Mowrah Butterate', 'bacuri-butter': 'Sodium Bacuri Butterate' },
  ...{
    'goose-fat': 'Sodium Goosefatate',
    'duck-fat': 'Sodium Duckfatate',
    'chicken-fat': 'Sodium Chickenfatate',
  },
  ...{ 'milk-fat': 'Sodium Butterfatate', 'horse-fat': 'Sodium Horsefatate', 'emu-oil': 'Sodium Emuate' },
};

/** @returns the sodium soap's name for the label; none for waxes, of which half stays as it was put in */
export function soapInci(key: string): { readonly name: string; readonly evidence: Evidence } | undefined {
  const known = listed[key];
  if (known !== undefined) return { name: known, evidence: inciDictionary };
  const formed = byPattern[key];
  return formed === undefined ? undefined : { name: formed, evidence: inciPattern };
}
