import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { METADATA } from '../../functions/metadata';
import { FUNCTIONS } from '../../functions/registry';

interface ExcelFunction {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
  readonly parameters: {
    name: string;
    description: string;
    optional?: boolean;
    dimensionality?: string;
    repeating?: boolean;
  }[];
  readonly options?: { volatile?: boolean };
}
const excel = JSON.parse(readFileSync('functions/functions.json', 'utf8')) as { functions: ExcelFunction[] };

/** The functions and arguments users' workbooks rely on. A change here breaks their formulas. */
const PROMISED: Readonly<Record<string, string>> = {
  RADIUS: 'span, rise',
  RISE: 'span, radius',
  SPAN: 'rise, radius',
  ANGLE: 'span, rise',
  ARCLENGTH: 'span, rise, [offset]',
  ORDINATES: 'span, rise, step',
  HEADLENGTH: 'head, span, [rise], [offset], [ends], [haunch]',
  HEADARCS: 'head, span, [rise], [offset], [ends], [arcs], [haunch]',
  HEADRADIUS: 'head, span, [rise], [arcs], [haunch]',
  HEADMITER: 'head, span, rise, face, [reveal], [ends], [haunch]',
  MITER: 'span, rise, face, [reveal]',
  SEGMENTS: 'radius, face, angle, board_width, [margin], [grain]',
  BLANKWIDTH: 'radius, face, angle, segments, [margin]',
  BLANKLENGTH: 'radius, face, angle, segments, [margin], [cut]',
  NEST: 'radius, face, angle, segments, board_width, [margin], [kerf]',
  GUIDES: 'radius, face, [margin], [clearance]',
  PLIES: 'radius, thickness, [ratio]',
  CUTSPERINCH: 'rpm, knives, feed, [feed_radius], [edge_radius]',
  FEEDRATE: 'cuts, rpm, knives',
  MARKDEPTH: 'cuts, diameter',
  RUNTIME: 'length, feed, [passes], [handling]',
  BOARDFEET: 'thickness, width, length, [quantity]',
  PERBOARD: 'board_length, piece_length, [kerf], [trim]',
  BOARDS: 'lengths, quantities, stock, [kerf], [trim], [prices]',
  STOCKYIELD: 'lengths, quantities, stock, [kerf], [trim], [prices]',
  OPENING: 'figure, main, more, shop, wood, [onhand]',
  SHARES: 'no, main, more, shop, wood, [onhand]',
  CUTPLAN: 'lengths, quantities, stock, [kerf], [trim], [prices]',
  INCHES: 'text',
  FEETINCHES: 'inches, [denominator]',
  LENGTHCHECK: 'quoted, head, span, rise, face, [reveal], [ends], [tolerance]',
};

describe('what is generated from the docstrings', () => {
  it('has every function promised, with its arguments by name and order', () => {
    const signatures = Object.fromEntries(
      excel.functions.map(({ name, parameters }) => [
        name,
        parameters.map((one) => (one.optional ? `[${one.name}]` : one.name)).join(', '),
      ]),
    );
    expect(signatures).toEqual(PROMISED);
  });

  it('gives Excel upper-case names without dots, help addresses, no volatile function and no repeating argument', () => {
    for (const { id, name, description, helpUrl, parameters, options } of excel.functions) {
      expect(id).toBe(name);
      expect(name).toMatch(/^[A-Z]+$/);
      expect(description).toMatch(/\.$/);
      expect(helpUrl).toBe(`https://archwright.example/docs/functions.html#${name.toLowerCase()}`);
      expect(options).toBeUndefined();
      for (const parameter of parameters) {
        expect(parameter.description, `${name} ${parameter.name}`).toMatch(/\.$/);
        expect(parameter.repeating).toBeUndefined();
      }
    }
  });

  it('says the same to Excel and to the other hosts', () => {
    expect(METADATA.map(({ name }) => name)).toEqual(excel.functions.map(({ name }) => name));
    METADATA.forEach((metadata, at) => {
      const { description, helpUrl, parameters } = excel.functions[at]!;
      expect(metadata).toMatchObject({ description, help: helpUrl });
      expect(metadata.parameters).toEqual(
        parameters.map((one) => ({
          name: one.name,
          description: one.description,
          optional: one.optional ?? false,
          range: one.dimensionality === 'matrix',
        })),
      );
    });
  });

  it('has code behind every name', () => {
    for (const { name, run } of FUNCTIONS) expect(run, name).toBeTypeOf('function');
  });
});
