import { Parser } from 'saxen';
import { refuse, type Refusal } from '../result';

export interface XmlHandlers {
  /** Names come without their prefix; attributes are read only when asked for. */
  open(name: string, attributes: () => Readonly<Record<string, string>>): void;
  close?(name: string): void;
  text?(text: string): void;
  /** True once nothing more is wanted; reading stops. */
  enough?(): boolean;
}

/** Walks through XML; gives back null, or a refusal where it is not well formed. */
export function walkXml(xml: string, part: string, handlers: XmlHandlers): Refusal | null {
  const parser = new Parser();
  let fault: string | null = null;
  let depth = 0;
  parser.on('openTag', (name, attributes, decode) => {
    depth += 1;
    handlers.open(local(name), () => decoded(attributes(), decode));
    if (handlers.enough?.()) parser.stop();
  });
  parser.on('closeTag', (name) => {
    depth -= 1;
    handlers.close?.(local(name));
  });
  parser.on('text', (text, decode) => handlers.text?.(decode(text)));
  parser.on('cdata', (text) => handlers.text?.(text));
  parser.on('error', (error) => {
    fault ??= error.message;
    parser.stop();
  });
  parser.parse(xml);
  if (fault === null && (depth === 0 || handlers.enough?.())) return null;
  return refuse(`The part "${part}" of the workbook is damaged.`);
}

function local(name: string): string {
  const colon = name.indexOf(':');
  return colon < 0 ? name : name.slice(colon + 1);
}

function decoded(attributes: Record<string, string>, decode: (text: string) => string): Record<string, string> {
  const plain: Record<string, string> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (name === 'xmlns' || name.startsWith('xmlns:')) continue;
    plain[local(name)] = decode(value);
  }
  return plain;
}
