/** Angles in degrees, as people say them, and in radians, as arithmetic takes them. Directions are counterclockwise from +x. */

export function degrees(radians: number): number {
  return radians * (180 / Math.PI);
}

export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** The point at a distance from a center, in a direction in degrees. */
export function polar(
  center: { readonly x: number; readonly y: number },
  distance: number,
  direction: number,
): { readonly x: number; readonly y: number } {
  const angle = radians(direction);
  return { x: center.x + distance * Math.cos(angle), y: center.y + distance * Math.sin(angle) };
}
