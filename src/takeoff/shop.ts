import type { SettingKey, Standards } from '../standards';

/** The shop's settings as a sheet holds them: where one can't be read, its default stands in, and what rests on it is blank. */
export interface Shop {
  readonly standards: Standards;
  /** Settings that can't be read: why, in a sentence. */
  readonly wrong?: ReadonlyMap<SettingKey, string>;
}

/** Stages of a row's figures; each rests on those named. */
const STAGES = {
  inputs: [],
  curve: ['inputs'],
  blank: ['curve'],
  machine: ['blank'],
  labor: ['machine'],
  attention: ['machine'],
} as const satisfies Record<string, readonly string[]>;
export type Stage = keyof typeof STAGES;

/** Lets each stage work with the settings and notes which of the wrong ones it read. */
export class SettingsRead {
  private readonly said = new Map<Stage, Set<string>>();

  constructor(private readonly shop: Shop) {}

  /** The settings for one stage. */
  for(stage: Stage): Standards {
    const { standards, wrong } = this.shop;
    if (wrong === undefined || wrong.size === 0) return standards;
    const said = this.said.get(stage) ?? new Set<string>();
    this.said.set(stage, said);
    return new Proxy(standards, {
      get(target, key) {
        const sentence = wrong.get(key as SettingKey);
        if (sentence !== undefined) said.add(sentence);
        return Reflect.get(target, key) as unknown;
      },
    });
  }

  /** Why a stage's figures can't be told: what is wrong with the settings that it, or a stage before it, read. */
  wrongFor(stage: Stage): readonly string[] {
    if (this.said.size === 0) return [];
    const before = STAGES[stage].flatMap((each) => this.wrongFor(each));
    return [...new Set([...before, ...(this.said.get(stage) ?? [])])];
  }

  all(): readonly string[] {
    return [...new Set([...this.said.values()].flatMap((said) => [...said]))];
  }
}
