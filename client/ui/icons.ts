import { html, svg, type TemplateResult } from 'lit';

const PATHS = {
  undo: svg`<path d="M8 6 4 10l4 4M4.5 10H14a5 5 0 0 1 0 10h-4" />`,
  speak: svg`<path d="M4 9.5v5h3.5L12 18V6L7.5 9.5zM15.5 9a4.5 4.5 0 0 1 0 6M18 6.5a8 8 0 0 1 0 11" />`,
  look: svg`<path d="M2.5 12S6 5.8 12 5.8 21.5 12 21.5 12 18 18.2 12 18.2 2.5 12 2.5 12z" /><circle cx="12" cy="12" r="2.8" />`,
  watch: svg`<path d="M4 5.5h16v11H4zM8 20.5h8M10.500 8.200v5.600l4.500-2.800z" />`,
  lamp: svg`<path d="M9 17.5h6M10 20.5h4M12 3.5a6 6 0 0 0-3.6 10.8c.5.5.8 1.2.8 2h5.6c0-.8.3-1.5.8-2A6 6 0 0 0 12 3.5z" />`,
  help: svg`<path d="M8.6 9a3.5 3.5 0 1 1 4.6 3.6c-.8.3-1.2.9-1.2 1.7v.5" /><circle cx="12" cy="18.2" r=".6" />`,
  left: svg`<path d="M20 12H5M10.5 6 4.5 12l6 6" />`,
  right: svg`<path d="M4 12h15M13.5 6l6 6-6 6" />`,
  back: svg`<path d="M6 6l12 12M18 6 6 18" />`,
  rub: svg`<path d="M9.5 6H20v12H9.5L3.5 12zM12.5 9.5l5 5M17.5 9.5l-5 5" />`,
  digits: svg`<path d="M6 8.2 8.2 6.5V17.500M13 8.600a2.600 2.600 0 0 1 5 .6c0 2.600-5 4.800-5 8.200h5.500" />`,
  waiting: svg`<circle cx="12" cy="12" r="8" /><path d="M12 7.500V12l3 2" />`,
  kept: svg`<path d="M5 12.500 10 17 19 7" />`,
} as const;

export type IconName = keyof typeof PATHS;

/** A line drawing of 24 × 24 in the colour of the text beside it; always decorative. */
export const icon = (name: IconName): TemplateResult => html`<svg
  viewBox="0 0 24 24"
  width="24"
  height="24"
  fill="none"
  stroke="currentColor"
  stroke-width="1.9"
  stroke-linecap="round"
  stroke-linejoin="round"
  aria-hidden="true"
>
  ${PATHS[name]}
</svg>`;
