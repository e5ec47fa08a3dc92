import { css } from 'lit';

export const printStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(17rem, 22rem) minmax(0, 1fr);
    gap: 0 24px;
    max-width: 1440px;
    margin: 0 auto;
    padding: 16px;
    box-sizing: border-box;
  }
  .form {
    display: grid;
    gap: 12px;
    align-content: start;
  }
  h1,
  .sheets > h2 {
    margin: 0;
    font-size: 1.5rem;
    font-weight: 400;
  }
  .sheets > h2 {
    font-size: 1.125rem;
  }
  p {
    margin: 0;
    color: var(--soft);
  }
  fieldset {
    display: grid;
    gap: 2px;
    margin: 0;
    min-width: 0;
    padding: 6px 12px 8px;
    border: 1.5px solid var(--rule);
    border-radius: 10px;
    background: var(--surface);
  }
  legend {
    padding: 0 4px;
    font-weight: 700;
  }
  label {
    display: flex;
    gap: 10px;
    align-items: center;
    min-height: 36px;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 16px;
    align-items: center;
    justify-content: space-between;
  }
  .line[role='radiogroup'] {
    justify-content: start;
  }
  .line[role='radiogroup'] > span {
    min-width: 4rem;
  }
  input[type='checkbox'],
  input[type='radio'] {
    flex: none;
    width: 22px;
    height: 22px;
    margin: 0;
    accent-color: var(--action);
  }
  input[type='number'],
  select,
  textarea {
    min-height: 40px;
    box-sizing: border-box;
    padding: 4px 8px;
    border: 1.5px solid var(--line);
    border-radius: 8px;
    background: var(--page);
    color: var(--ink);
    font: inherit;
  }
  input[type='number'] {
    width: 5.5rem;
  }
  .typed {
    display: grid;
    gap: 4px;
  }
  textarea {
    width: 100%;
    resize: vertical;
  }
  .fault {
    color: var(--again);
  }
  .act {
    position: sticky;
    z-index: 1;
    bottom: 0;
    display: flex;
    flex-wrap: wrap;
    gap: 8px 14px;
    align-items: center;
    padding: 10px 0;
    background: var(--page);
  }
  .act a {
    display: inline-flex;
    align-items: center;
    min-height: 44px;
    color: var(--ink);
  }
  .sheets {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 20rem), 1fr));
    gap: 16px;
    align-items: start;
    align-content: start;
  }
  .sheets > h2 {
    grid-column: 1 / -1;
  }
  /* Paper is paper in any light and any contrast. */
  .sheet {
    color-scheme: light;
    forced-color-adjust: none;
    border: 1px solid var(--line);
    background: #fff;
    color: #14171a;
    line-height: 0;
  }
  .sheet svg {
    display: block;
    width: 100%;
    height: auto;
    direction: ltr;
    font-family: Andika, sans-serif;
    line-height: 1.3;
  }
  .text {
    color: #14171a;
    line-height: 1.32;
  }
  .text h2 {
    margin: 0.6em 0 0.2em;
    font-size: 1.15em;
    font-weight: 700;
  }
  .text ul {
    margin: 0;
    padding-inline-start: 1.3em;
  }
  .text li {
    margin: 0 0 0.35em;
  }
  @media (max-width: 767px) {
    :host {
      display: block;
      padding: 12px;
    }
    .sheets {
      margin-top: 12px;
    }
  }
  @media print {
    :host {
      display: block;
      max-width: none;
      margin: 0;
      padding: 0;
    }
    .form,
    .sheets > h2 {
      display: none;
    }
    .sheets {
      display: block;
      margin: 0;
    }
    .sheet {
      position: relative;
      width: var(--paper-width);
      height: var(--paper-height);
      overflow: hidden;
      border: 0;
      break-after: page;
      break-inside: avoid;
    }
    .sheet:last-child {
      break-after: auto;
    }
    .sheet svg {
      position: absolute;
      top: 0;
      left: 0;
      width: var(--paper-width);
      height: var(--paper-height);
    }
    .sheet.landscape svg {
      width: var(--paper-height);
      height: var(--paper-width);
      transform-origin: 0 0;
      transform: rotate(90deg) translateY(-100%);
    }
  }
`;
