import { css } from 'lit';

/** Shared look of everything that can be pressed: big enough for a finger, its focus never hidden by colour alone. */
export const buttonStyles = css`
  button {
    min-width: 44px;
    min-height: 44px;
    box-sizing: border-box;
    padding: 0 14px;
    border: 1.5px solid var(--line);
    border-radius: 10px;
    background: var(--surface);
    color: var(--ink);
    font: inherit;
    line-height: 1.1;
    cursor: pointer;
    touch-action: manipulation;
    -webkit-tap-highlight-color: transparent;
  }
  /* Nothing that moves: a press that lays the page out anew is felt on a slow device. */
  button:active:not([disabled]) {
    box-shadow: inset 0 0 0 2px currentcolor;
  }
  button[aria-pressed='true'],
  button[aria-current='step'] {
    border-color: var(--ink);
    background: var(--ink);
    color: var(--page);
  }
  button.primary {
    border-color: var(--action);
    background: var(--action);
    color: var(--on-action);
    font-weight: 700;
  }
  button.icon {
    display: inline-grid;
    place-items: center;
    padding: 0;
  }
  button[disabled] {
    border-style: dashed;
    background: transparent;
    color: var(--soft);
    font-weight: 400;
    cursor: default;
  }
  :focus {
    outline: none;
  }
  :focus-visible {
    outline: 3px solid var(--focus);
    outline-offset: 2px;
    box-shadow: 0 0 0 2px var(--gap);
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  @media (forced-colors: active) {
    button[aria-pressed='true'],
    button[aria-current='step'] {
      background: Highlight;
      color: HighlightText;
    }
  }
`;
