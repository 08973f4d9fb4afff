import { useState, type ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { canVibrate, soundLastCall } from '../now/alarm.js';
import { usePreference } from '../preferences/preferences.js';

/** Whether last call may be heard and felt, with a way to try it beforehand. */
export function LastCall(): ReactNode {
  const settings = useSettingsWords();
  const [isOn, turn] = usePreference('sound');
  const [isTried, setTried] = useState(false);
  return (
    <fieldset className="choice">
      <legend>{settings.lastCall}</legend>
      <label>
        <input type="checkbox" checked={isOn} onChange={({ target }) => turn(target.checked)} />
        <span>{settings.sound}</span>
      </label>
      {!canVibrate() && <p className="soft small">{settings.noVibration}</p>}
      <p>
        <button
          type="button"
          className="button"
          onClick={() => {
            soundLastCall();
            setTried(true);
          }}
        >
          {settings.try}
        </button>
      </p>
      <p role="status" className="soft small">
        {isTried && settings.tried}
      </p>
    </fieldset>
  );
}
