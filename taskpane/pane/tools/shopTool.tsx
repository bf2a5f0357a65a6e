import { useState } from 'preact/hooks';
import { ok } from '../../../src/result';
import { SETTING_GROUPS, SETTINGS, type Setting } from '../../../src/standards';
import { UNITS } from '../../../src/unit';
import { settingUnit } from '../../../src/settingUnit';
import type { Bench } from '../deeds/bench';
import { freeze, reenter } from '../deeds/formulas';
import { changeUnit, loadShopFile, saveShopFile, setSetting } from '../deeds/shop';
import { notSetHint, settingText } from '../fields';
import { Ask } from '../parts/ask';
import { Entry } from '../parts/entry';
import { settingsHelp } from '../help';
import { FilePick } from '../parts/filePick';
import { HelpLink } from '../parts/helpLink';
import type { PaneState } from '../state';
import { PlanTool } from './planTool';

/** The shop: its standards, what is done with the whole workbook, and what goes to the bench. */
export function ShopTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  return (
    <>
      <h1>Shop</h1>
      <Standards bench={bench} state={state} />
      {/* Board lengths typed in inches mean nothing in millimeters. */}
      <PlanTool key={state.standards.unit} bench={bench} state={state} />
      <Workbook bench={bench} />
    </>
  );
}

function Standards({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const [asking, setAsking] = useState<(typeof UNITS)[number] | null>(null);
  const { unit } = state.standards;
  return (
    <section class="card" aria-labelledby="standards-title">
      <h2 id="standards-title">Standards of this workbook</h2>
      <div class="field">
        <label for="unit">Unit of length</label>
        <select
          id="unit"
          value={unit}
          onChange={(event) => {
            const chosen = UNITS.find((one) => one === event.currentTarget.value);
            event.currentTarget.value = unit;
            if (chosen && chosen !== unit) setAsking(chosen);
          }}
        >
          <option value="in">inches</option>
          <option value="mm">millimeters</option>
        </select>
      </div>
      {asking && (
        <Ask
          title={`Keep this workbook in ${asking === 'mm' ? 'millimeters' : 'inches'}?`}
          about="Every setting starts again from the round figures of that unit, the stock list too."
          yes="Change the unit"
          no="Leave it"
          onYes={() => {
            setAsking(null);
            void changeUnit(bench, asking);
          }}
          onNo={() => setAsking(null)}
        />
      )}
      {SETTING_GROUPS.filter((group) => group !== 'Workbook').map((group) => (
        <details key={group} class="settings">
          <summary>{group}</summary>
          <div class="setting-list">
            {(SETTINGS as readonly Setting[])
              .filter((setting) => setting.group === group)
              .map((setting) => (
                <SettingInput key={setting.key} bench={bench} state={state} setting={setting} />
              ))}
          </div>
          <HelpLink to={settingsHelp(group)}>What these settings do</HelpLink>
        </details>
      ))}
      <div class="pair">
        <button type="button" onClick={() => saveShopFile(bench)}>
          Save as a file
        </button>
        <FilePick label="Use a saved file" accept=".json,.csv,.xlsx" take={(file) => void loadShopFile(bench, file)} />
      </div>
    </section>
  );
}

interface SettingProps {
  readonly bench: Bench;
  readonly state: PaneState;
  readonly setting: Setting;
}

function SettingInput({ bench, state, setting }: SettingProps) {
  const [refused, setRefused] = useState<string | null>(null);
  const { standards } = state;
  const held = settingText(setting, standards, bench.options.locale);
  const take = async (typed: string) => {
    const taken = typed === held ? ok(undefined) : await setSetting(bench, setting, typed);
    setRefused(taken.ok ? null : taken.message);
    return taken.ok;
  };
  const unit = setting.measure === 'count' ? '' : settingUnit(setting.measure, standards.unit);
  return (
    <Entry
      id={`setting-${setting.key}`}
      look="setting"
      label={
        <>
          {setting.label}
          {unit !== '' && <span class="soft"> {unit}</span>}
        </>
      }
      held={held}
      hint={notSetHint(setting, standards, bench.options.locale)}
      choices={setting.measure === 'choice' ? setting.choices : undefined}
      note={setting.note}
      refused={refused}
      take={take}
    />
  );
}

function Workbook({ bench }: { readonly bench: Bench }) {
  const [asking, setAsking] = useState(false);
  return (
    <section class="card" aria-labelledby="workbook-title">
      <h2 id="workbook-title">The whole workbook</h2>
      <p>Formulas that show a name instead of a figure after the file came back from elsewhere are entered again.</p>
      <button type="button" onClick={() => reenter(bench)}>
        Re-enter ARCH formulas
      </button>
      <p>To send a takeoff on as it is, its formulas can become plain figures.</p>
      {asking ? (
        <Ask
          askedBy="freeze"
          title="Freeze every formula of our sheets?"
          about="The figures stay as they are now and no longer follow a changed span or rate. Save a copy first if you may want to change something later."
          yes="Freeze to values"
          no="Leave them live"
          onYes={() => {
            setAsking(false);
            void freeze(bench);
          }}
          onNo={() => setAsking(false)}
        />
      ) : (
        <button id="freeze" type="button" onClick={() => setAsking(true)}>
          Freeze to values
        </button>
      )}
    </section>
  );
}
