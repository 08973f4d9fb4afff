import type { ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { Demo } from './demo.js';
import { Devices } from './devices.js';
import { LanguageChoice } from '../form/language-choice.js';
import { LastCall } from './last-call.js';
import { NudgeLanguage } from './nudge-language.js';
import { Nudges } from './nudges.js';
import { PlainHttp } from './plain-http.js';
import { SignOut } from './sign-out.js';
import { TimeZoneChoice } from './time-zone-choice.js';
import { UnitsChoice } from './units-choice.js';
import './settings.css';

/** How things are shown on this device, how the maker is told, and who may come in. */
export default function SettingsPage(): ReactNode {
  const settings = useSettingsWords();
  return (
    <div className="settings stack">
      <h1>{settings.title}</h1>
      <div className="columns">
        <section className="card stack" aria-labelledby="shown">
          <h2 id="shown">{settings.shown}</h2>
          <p className="soft small">{settings.onThisDevice}</p>
          <LanguageChoice />
          <UnitsChoice />
          <TimeZoneChoice />
        </section>
        <div className="stack">
          <PlainHttp />
          <section className="card stack" aria-labelledby="told">
            <h2 id="told">{settings.told}</h2>
            <Nudges />
            <NudgeLanguage />
            <LastCall />
          </section>
          <section className="card stack" aria-labelledby="devices">
            <h2 id="devices">{settings.devices}</h2>
            <Devices />
          </section>
          <Demo />
          <section className="card stack" aria-labelledby="sign-out">
            <h2 id="sign-out">{settings.signOut}</h2>
            <SignOut />
          </section>
        </div>
      </div>
    </div>
  );
}
