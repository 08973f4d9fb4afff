import type { ReactNode } from 'react';
import { Link, useParams } from 'react-router';
import type { Schemas } from '../../api/client.js';
import { useAmounts } from '../../look/amounts.js';
import { Failed, Loading, NothingHere } from '../../shell/states.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { useShippedFats } from '../shelf-calls.js';
import type { FattyAcid } from './own-from.js';
import '../library.css';

/** A fat that ships with the program: every figure with where it comes from. */
export default function ShippedFatPage(): ReactNode {
  const { library } = useWords();
  const { titled, behaviourOf } = useTexts();
  const { key } = useParams();
  const { data, error, refetch } = useShippedFats();
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  const fat = data.find((each) => each.key === key);
  if (fat === undefined) return <NothingHere />;
  return (
    <div className="stack">
      <header className="stack tight">
        <p>
          <Link className="tap" to="/makings">
            {library.back}
          </Link>
        </p>
        <h1>{titled(fat.key, fat.title)}</h1>
        <p className="soft">{behaviourOf(fat.key, fat.behaviour)}</p>
      </header>
      <Figures fat={fat} />
      <div className="note stack tight">
        <p>{library.ownWhy}</p>
        <p>
          <Link className="button" to={`/makings/fats/new?as=${fat.key}`}>
            {library.ownHow}
          </Link>
        </p>
      </div>
    </div>
  );
}

type Evidence = Schemas['ShippedFat']['evidence']['density'];

function Figures({ fat }: { readonly fat: Schemas['ShippedFat'] }): ReactNode {
  const { library } = useWords();
  const { number, percent, temperature } = useAmounts();
  const { names, behaviourOf } = useTexts();
  const { saponificationMgKohPerG: sap, iodine, unsaponifiablePercent, evidence } = fat;
  const range = (
    each: { readonly low: number; readonly high: number },
    last: (value: number) => string = number,
  ): string => (each.low === each.high ? last(each.low) : library.fromTo(number(each.low), last(each.high)));
  const acids = Object.entries(fat.fattyAcidsPercent)
    .map(([acid, share]) => `${library.acidsByName[acid as FattyAcid] ?? acid} ${number(share)}`)
    .join(' · ');
  const rows: readonly (readonly [string, ReactNode, Evidence | undefined])[] = [
    [library.saponification, `${number(sap.used)} mg/g (${range(sap)})`, evidence.saponification],
    [library.profile, acids === '' ? undefined : acids, evidence.fattyAcids],
    [library.iodine, iodine && `${range(iodine)} g/100 g`, evidence.iodine],
    [
      library.unsaponifiable,
      unsaponifiablePercent && range(unsaponifiablePercent, percent),
      evidence.unsaponifiable,
    ],
    [library.density(temperature(20)), `${number(fat.densityGPerMl, 3)} g/mL`, evidence.density],
    [library.expansion, `${number(fat.expansionGPerMlPerC, 5)} g/mL/°C`, evidence.expansion],
    // A name of a register, in no language.
    [library.inci, fat.inci && <span translate="no">{fat.inci}</span>, evidence.inci],
    [library.soapInci, fat.soapInci && <span translate="no">{fat.soapInci}</span>, evidence.soapInci],
    [
      library.alsoCalled,
      fat.aliases.length === 0 ? undefined : <span translate="no">{fat.aliases.join(' · ')}</span>,
      undefined,
    ],
    [library.fatBehaviour, behaviourOf(fat.key, fat.behaviour), evidence.behaviour],
  ];
  return (
    <dl className="card figures">
      {rows
        .filter(([, value]) => value !== undefined)
        .map(([name, value, source]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className="numbers">{value}</dd>
            <dd className="soft small">{source && names.evidence(source)}</dd>
          </div>
        ))}
    </dl>
  );
}
