import { useId, useMemo, useState, type ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { useNow, useTimes } from '../look/times.js';
import { useSession } from '../session/session.js';
import { Choice } from '../form/choice.js';
import { usePreference } from '../preferences/preferences.js';
import { findTimeZone, knownTimeZones } from './time-zones.js';

/** The time zone in which this device shows times: the workshop's, or another while travelling. */
export function TimeZoneChoice(): ReactNode {
  const settings = useSettingsWords();
  const times = useTimes();
  const now = useNow(30_000);
  const { workshop } = useSession();
  const [chosen, choose] = usePreference('timeZone');
  const [isOther, setOther] = useState(chosen !== 'workshop');
  return (
    <div className="stack tight">
      <Choice
        legend={settings.timeZone}
        name="time-zone"
        value={isOther ? 'other' : 'workshop'}
        options={[
          { value: 'workshop', text: settings.ofWorkshop(workshop.timeZone) },
          { value: 'other', text: settings.another },
        ]}
        onChoose={(value) => {
          setOther(value === 'other');
          if (value === 'workshop') choose('workshop');
        }}
      />
      {isOther && <ZoneField chosen={chosen === 'workshop' ? workshop.timeZone : chosen} onChoose={choose} />}
      <p className="soft small numbers">{settings.zoneNow(times.dayTime(now))}</p>
      <p className="soft small">{settings.zonePlans}</p>
    </div>
  );
}

function ZoneField({
  chosen,
  onChoose,
}: {
  readonly chosen: string;
  readonly onChoose: (zone: string) => void;
}): ReactNode {
  const settings = useSettingsWords();
  const id = useId();
  const zones = useMemo(() => knownTimeZones(), []);
  const [text, setText] = useState(chosen);
  const [isWrong, setWrong] = useState(false);
  const take = (typed: string, isLast: boolean): void => {
    setText(typed);
    const zone = findTimeZone(typed, zones);
    if (zone !== undefined) onChoose(zone);
    // While a name is being typed it is not wrong yet.
    setWrong(isLast && zone === undefined);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{settings.zone}</label>
      <input
        id={id}
        list={`${id}-zones`}
        value={text}
        autoComplete="off"
        spellCheck={false}
        aria-invalid={isWrong}
        aria-describedby={`${id}-hint ${id}-wrong`}
        onChange={({ target }) => take(target.value, false)}
        onBlur={() => take(text, true)}
      />
      <datalist id={`${id}-zones`}>
        {zones.map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <p id={`${id}-hint`} className="soft small">
        {settings.zoneHint}
      </p>
      <p id={`${id}-wrong`} className="wrong" role="alert">
        {isWrong && settings.zoneWrong}
      </p>
    </div>
  );
}
