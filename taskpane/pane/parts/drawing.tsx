import { polar } from '../../../src/angle';
import { bounds } from '../../../src/drawing/bounds';
import { explode } from '../../../src/drawing/dimension';
import { arcOfStep } from '../../../src/drawing/roundSteps';
import type { Outline, Point, Primitive, Scene } from '../../../src/drawing/scene';

/** A scene as live SVG in the page, colored by the style sheet: one class for each layer. */
export function Drawing({ scene }: { readonly scene: Scene }) {
  const shapes = explode(scene.shapes);
  const box = bounds(shapes);
  const size = Math.max(box.right - box.left, box.top - box.bottom);
  const edge = size * 0.02;
  const viewBox = [
    box.left - edge,
    -box.top - edge,
    box.right - box.left + 2 * edge,
    box.top - box.bottom + 2 * edge,
  ].map(short);
  return (
    <svg class="drawing" viewBox={viewBox.join(' ')} role="img" aria-label={scene.description}>
      {shapes.map((shape, index) => (
        <Mark key={index} shape={shape} />
      ))}
    </svg>
  );
}

function Mark({ shape }: { readonly shape: Primitive }) {
  const look = `layer-${shape.layer}`;
  switch (shape.kind) {
    case 'line':
      return <path class={look} d={`M ${at(shape.from)} L ${at(shape.to)}`} />;
    case 'circle':
      return <circle class={look} cx={short(shape.center.x)} cy={short(-shape.center.y)} r={short(shape.radius)} />;
    case 'arc': {
      if (shape.end - shape.start >= 360 - 1e-9) {
        return <circle class={look} cx={short(shape.center.x)} cy={short(-shape.center.y)} r={short(shape.radius)} />;
      }
      const from = polar(shape.center, shape.radius, shape.start);
      const to = polar(shape.center, shape.radius, shape.end);
      const large = shape.end - shape.start > 180 ? 1 : 0;
      return (
        <path class={look} d={`M ${at(from)} A ${short(shape.radius)} ${short(shape.radius)} 0 ${large} 0 ${at(to)}`} />
      );
    }
    case 'polyline':
      return <path class={look} d={`M ${shape.points.map(at).join(' L ')}${shape.closed ? ' Z' : ''}`} />;
    case 'outline':
      return <path class={`${look}${shape.filled ? ' filled' : ''}`} d={outlinePath(shape)} />;
    case 'text':
      return (
        <text
          class={look}
          x={short(shape.at.x)}
          y={short(-shape.at.y)}
          font-size={short(shape.height * 1.4)}
          text-anchor={shape.anchor}
          transform={shape.turned ? `rotate(${-shape.turned} ${short(shape.at.x)} ${short(-shape.at.y)})` : undefined}
        >
          {shape.text}
        </text>
      );
  }
}

function outlinePath(shape: Outline): string {
  let from = shape.start;
  const parts = [`M ${at(from)}`];
  for (const { to, round } of shape.steps) {
    if (round) {
      const { radius, start, end } = arcOfStep(from, to, round);
      // y points down on the page: what turns clockwise here sweeps with flag 1.
      parts.push(
        `A ${short(radius)} ${short(radius)} 0 ${end - start > 180 ? 1 : 0} ${round.clockwise ? 1 : 0} ${at(to)}`,
      );
    } else parts.push(`L ${at(to)}`);
    from = to;
  }
  return `${parts.join(' ')} Z`;
}

function at(point: Point): string {
  return `${short(point.x)} ${short(-point.y)}`;
}

function short(figure: number): number {
  return Number(figure.toFixed(4));
}
