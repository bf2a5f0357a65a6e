import type { ComponentChildren } from 'preact';

/** Help opens beside the work, never in its place. */
export function HelpLink({ to, children }: { readonly to: string; readonly children: ComponentChildren }) {
  return (
    <p class="help">
      <a href={to} target="_blank" rel="noopener">
        {children}
      </a>
    </p>
  );
}
