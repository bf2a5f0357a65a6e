import { SaxesParser } from 'saxes';

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** Reads an SVG with a strict XML parser; whatever is not well-formed throws. */
export function readSvg(svg: string): Element {
  const parser = new SaxesParser();
  const top: Element = { name: '', attributes: {}, children: [], text: '' };
  const open: Element[] = [top];
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    const element: Element = {
      name: tag.name,
      attributes: tag.attributes as Record<string, string>,
      children: [],
      text: '',
    };
    open.at(-1)!.children.push(element);
    open.push(element);
  });
  parser.on('text', (text) => {
    open.at(-1)!.text += text;
  });
  parser.on('closetag', () => void open.pop());
  parser.write(svg).close();
  return top.children[0]!;
}

export function everyElement(element: Element): Element[] {
  return [element, ...element.children.flatMap(everyElement)];
}

/** The texts of an SVG's source. */
export function wordsOf(svg: string): string[] {
  return everyElement(readSvg(svg)).flatMap(({ name, text }) => (name === 'text' ? [text] : []));
}

/** The elements drawn on one layer. */
export function onLayer(svg: Element, layer: string): Element[] {
  return svg.children
    .filter((child) => child.attributes['class'] === `layer-${layer}`)
    .flatMap((group) => group.children);
}
