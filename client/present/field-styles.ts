import { css } from 'lit';

/** A field under its name. */
export const fieldStyles = css`
  label {
    display: grid;
    gap: 2px;
  }
  input,
  select {
    min-height: 44px;
    box-sizing: border-box;
    padding: 4px 10px;
    border: 1.5px solid var(--line);
    border-radius: 8px;
    background: var(--page);
    color: var(--ink);
    font: inherit;
  }
`;
